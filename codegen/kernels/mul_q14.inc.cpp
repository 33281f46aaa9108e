// floor(a * b / 16384): the product of two numbers with 14 fraction bits.
static int16_t mul_q14(int16_t a, int16_t b) {
  return (int16_t)(((int32_t)a * b) >> 14);
}
