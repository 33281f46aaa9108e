// Length of a vector. Its parts are halved until each has 15 bits, so that the squares fit.
static int32_t length_of_3(int32_t x, int32_t y, int32_t z) {
  uint32_t a = size_of(x);
  uint32_t b = size_of(y);
  uint32_t c = size_of(z);
  uint8_t halvings = 0;
  while ((a | b | c) >= 0x8000u) {
    a >>= 1;
    b >>= 1;
    c >>= 1;
    halvings++;
  }
  const uint32_t length = root_digits(a * a + b * b + c * c, 16) << halvings;
  return length > 0x7fffffffUL ? 0x7fffffffL : (int32_t)length;
}
