// Chance without chance: the same number always scatters to the same place.
static uint16_t scatter(uint16_t x) {
  x = (uint16_t)(x ^ (x >> 8));
  x = (uint16_t)(x * 0x88b5u);
  x = (uint16_t)(x ^ (x >> 7));
  x = (uint16_t)(x * 0xdb2du);
  return (uint16_t)(x ^ (x >> 9));
}
