// The soft step t * t * (3 - 2t) of 0 to 1 in 14 fraction bits, spelled so that no part leaves -2 to 2.
static int16_t soft_step(int16_t t) {
  if (t <= 0) return 0;
  if (t >= 16384) return 16384;
  const int16_t square = mul_q14(t, t);
  const int16_t value = (int16_t)(square + 2 * (square - mul_q14(square, t)));
  return value > 16384 ? (int16_t)16384 : value;
}
