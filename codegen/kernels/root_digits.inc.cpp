// Square root, one binary digit at a time, as on paper. Digits beyond 16 are fraction bits.
static uint32_t root_digits(uint32_t square, uint8_t digits) {
  uint32_t result = 0;
  uint32_t rest = 0;
  for (; digits > 0; digits--) {
    rest = (rest << 2) | (square >> 30);
    square <<= 2;
    result <<= 1;
    const uint32_t trial = (result << 1) | 1u;
    if (rest >= trial) {
      rest -= trial;
      result |= 1u;
    }
  }
  return result;
}
