// What is left over by whole division, with the sign of a; 0 where b is 0.
static int32_t remainder_of(int32_t a, int32_t b) {
  if (b == 0 || b == -1) return 0;
  return a % b;
}
