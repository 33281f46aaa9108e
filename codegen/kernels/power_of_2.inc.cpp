// 2 to the power of x, both with 16 fraction bits: a table for the fraction, a shift for the rest.
static int32_t power_of_2(int32_t x) {
  const int16_t whole = (int16_t)(x >> 16);
  const uint8_t step = (uint8_t)((x >> 10) & 63);
  const uint32_t from = READ_32(@power[step]);
  const uint32_t rise = READ_32(@power[step + 1]) - from;
  const uint32_t value = from + ((rise * (uint32_t)(x & 1023)) >> 10);
  if (whole >= 15) return 0x7fffffffL;
  if (whole < -17) return 0;
  return (int32_t)(whole >= 0 ? value << whole : value >> -whole);
}
