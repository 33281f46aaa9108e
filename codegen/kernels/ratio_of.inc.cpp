// a * 2^bits / b, cut towards 0: long division, one binary digit at a time; 0 where b is 0.
static int32_t ratio_of(int32_t a, int32_t b, uint8_t bits) {
  if (b == 0) return 0;
  const uint32_t divisor = size_of(b);
  uint32_t result = size_of(a) / divisor;
  uint32_t rest = size_of(a) % divisor;
  for (; bits > 0; bits--) {
    rest <<= 1;
    result <<= 1;
    if (rest >= divisor) {
      rest -= divisor;
      result |= 1u;
    }
  }
  return (int32_t)((a < 0) != (b < 0) ? 0u - result : result);
}
