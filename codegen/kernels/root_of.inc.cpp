// The whole square root.
static uint16_t root_of(uint32_t square) { return (uint16_t)root_digits(square, 16); }
