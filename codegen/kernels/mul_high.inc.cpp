// floor(a * b / 65536): the product of two fractions.
static uint16_t mul_high(uint16_t a, uint16_t b) {
  return (uint16_t)(((uint32_t)a * b) >> 16);
}
