// Whole division that never fails: by 0 it gives 0, and the one quotient that does not fit wraps.
static int32_t quotient(int32_t a, int32_t b) {
  if (b == 0) return 0;
  if (b == -1) return (int32_t)(0u - (uint32_t)a);
  return a / b;
}
