// ---- Blending: laying a clip's pixel on what is there already

//? unitMul
// Two shares, 0 to 255 each, multiplied: 255 stands for one and is exact.
static uint8_t unit_mul(uint8_t a, uint8_t b) {
  return (uint8_t)((uint16_t)((uint16_t)a * b + a) >> 8);
}

//.
//? unitMix
// From `under` (amount 0) to `over` (amount 255), both exact.
static uint8_t unit_mix(uint8_t under, uint8_t over, uint8_t amount) {
  const uint16_t kept = (uint16_t)((uint16_t)under * (uint16_t)(256 - amount));
  const uint16_t laid = (uint16_t)((uint16_t)over * (uint16_t)(amount + 1));
  return (uint8_t)((uint16_t)(kept + laid) >> 8);
}

//.
//? normal
static void lay_normal(uint16_t pixel, uint8_t red, uint8_t green, uint8_t blue, uint8_t amount) {
  uint8_t *at = frame + 3 * pixel;
  at[0] = unit_mix(at[0], red, amount);
  at[1] = unit_mix(at[1], green, amount);
  at[2] = unit_mix(at[2], blue, amount);
}

//.
//? multiply
static uint8_t multiply(uint8_t under, uint8_t over, uint8_t amount) {
  return unit_mix(under, unit_mul(under, over), amount);
}

static void lay_multiply(uint16_t pixel, uint8_t red, uint8_t green, uint8_t blue, uint8_t amount) {
  uint8_t *at = frame + 3 * pixel;
  at[0] = multiply(at[0], red, amount);
  at[1] = multiply(at[1], green, amount);
  at[2] = multiply(at[2], blue, amount);
}

//.
//? screen
static uint8_t screen(uint8_t under, uint8_t over, uint8_t amount) {
  const uint8_t dark = unit_mul((uint8_t)(255 - under), (uint8_t)(255 - over));
  return unit_mix(under, (uint8_t)(255 - dark), amount);
}

static void lay_screen(uint16_t pixel, uint8_t red, uint8_t green, uint8_t blue, uint8_t amount) {
  uint8_t *at = frame + 3 * pixel;
  at[0] = screen(at[0], red, amount);
  at[1] = screen(at[1], green, amount);
  at[2] = screen(at[2], blue, amount);
}

//.
//? darken
static uint8_t darken(uint8_t under, uint8_t over, uint8_t amount) {
  return unit_mix(under, over < under ? over : under, amount);
}

static void lay_darken(uint16_t pixel, uint8_t red, uint8_t green, uint8_t blue, uint8_t amount) {
  uint8_t *at = frame + 3 * pixel;
  at[0] = darken(at[0], red, amount);
  at[1] = darken(at[1], green, amount);
  at[2] = darken(at[2], blue, amount);
}

//.
//? lighten
static uint8_t lighten(uint8_t under, uint8_t over, uint8_t amount) {
  return unit_mix(under, over > under ? over : under, amount);
}

static void lay_lighten(uint16_t pixel, uint8_t red, uint8_t green, uint8_t blue, uint8_t amount) {
  uint8_t *at = frame + 3 * pixel;
  at[0] = lighten(at[0], red, amount);
  at[1] = lighten(at[1], green, amount);
  at[2] = lighten(at[2], blue, amount);
}

//.
//? plusLighter
static uint8_t plus_lighter(uint8_t under, uint8_t over, uint8_t amount) {
  const uint8_t sum = (uint8_t)(under + unit_mul(over, amount));
  return sum < under ? 255 : sum;
}

static void lay_plus_lighter(uint16_t pixel, uint8_t red, uint8_t green, uint8_t blue, uint8_t amount) {
  uint8_t *at = frame + 3 * pixel;
  at[0] = plus_lighter(at[0], red, amount);
  at[1] = plus_lighter(at[1], green, amount);
  at[2] = plus_lighter(at[2], blue, amount);
}
//.
