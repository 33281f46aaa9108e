// a minus the largest multiple of b that is not beyond it: the sign of b; 0 where b is 0.
static int32_t floor_mod(int32_t a, int32_t b) {
  const int32_t rest = remainder_of(a, b);
  return rest != 0 && (rest < 0) != (b < 0) ? rest + b : rest;
}
