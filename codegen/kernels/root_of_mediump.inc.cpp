// The square root of a number with 16 fraction bits; 0 below 0.
static int32_t root_of_mediump(int32_t square) {
  return square <= 0 ? 0 : (int32_t)root_digits((uint32_t)square, 24);
}
