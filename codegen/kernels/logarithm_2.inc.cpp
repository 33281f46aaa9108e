// The logarithm of x to the base 2, both with 16 fraction bits; -16 for 0 and below.
static int32_t logarithm_2(int32_t x) {
  if (x <= 0) return -16 * 65536;
  uint32_t value = (uint32_t)x;
  int16_t exponent = 0;
  while (value >= 0x20000UL) {
    value >>= 1;
    exponent++;
  }
  while (value < 0x10000UL) {
    value <<= 1;
    exponent--;
  }
  const uint8_t step = (uint8_t)((value >> 10) & 63u);
  const uint32_t from = READ_32(@logarithm[step]);
  const uint32_t rise = READ_32(@logarithm[step + 1]) - from;
  return (int32_t)exponent * 65536 + (int32_t)(from + ((rise * (value & 1023u)) >> 10));
}
