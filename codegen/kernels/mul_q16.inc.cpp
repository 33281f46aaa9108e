// floor(a * b / 65536): the product of two numbers with 16 fraction bits.
static int32_t mul_q16(int32_t a, int32_t b) {
  return (int32_t)(((int64_t)a * b) >> 16);
}
