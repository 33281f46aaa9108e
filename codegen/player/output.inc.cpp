// Light 0 to 65280 times a factor in 1/256.
static inline uint16_t scale_light(uint16_t light, uint16_t factor) {
  if (factor == 256) return light;
#if defined(__AVR_HAVE_MUL__)
  const uint8_t small = (uint8_t)factor;
  uint16_t scaled;
  asm("mul %A[light], %[small]\n\t"
      "mov %A[scaled], r1\n\t"
      "mul %B[light], %[small]\n\t"
      "add %A[scaled], r0\n\t"
      "mov %B[scaled], r1\n\t"
      "clr __zero_reg__\n\t"
      "adc %B[scaled], __zero_reg__"
      : [scaled] "=&r"(scaled)
      : [light] "r"(light), [small] "r"(small));
  return scaled;
#else
  return (uint16_t)(((uint32_t)light * factor) >> 8);
#endif
}

// A level of 0 to 255 is what the eye sees; the pixel wants to know how much light that is.
static uint8_t drive_of(uint8_t level, uint16_t factor) {
  const uint16_t light = scale_light(READ_16(GAMMA[level]), factor);
  return (uint8_t)((uint16_t)(light + 128) >> 8);
}

//? balance
static uint16_t balanced(uint16_t factor, uint16_t balance) {
  return (uint16_t)(((uint32_t)factor * balance + 128) >> 8);
}

//.
static void levels_to_drive() {
  const uint16_t factor = (uint16_t)(shown.brightness + (shown.brightness >> 7));
//? balance
  const uint16_t red_factor = balanced(factor, RED_BALANCE);
  const uint16_t green_factor = balanced(factor, GREEN_BALANCE);
  const uint16_t blue_factor = balanced(factor, BLUE_BALANCE);
//.
  for (uint16_t at = 0; at < FRAME_BYTES; at = (uint16_t)(at + 3)) {
    uint8_t *pixel = frame + at;
//? balance
    const uint8_t red = drive_of(pixel[0], red_factor);
    const uint8_t green = drive_of(pixel[1], green_factor);
    const uint8_t blue = drive_of(pixel[2], blue_factor);
//.
//? !balance
    const uint8_t red = drive_of(pixel[0], factor);
    const uint8_t green = drive_of(pixel[1], factor);
    const uint8_t blue = drive_of(pixel[2], factor);
//.
    pixel[RED_AT] = red;
    pixel[GREEN_AT] = green;
    pixel[BLUE_AT] = blue;
    watch_the_buttons();
  }
}

// What the light in the frame draws, in 1/2550 mA.
static uint32_t light_current() {
//? equalCurrents
  uint32_t sum = 0;
  for (uint16_t at = 0; at < FRAME_BYTES; at++) sum += frame[at];
  return sum * COLOUR_TENTHS;
//.
//? !equalCurrents
  uint32_t red = 0;
  uint32_t green = 0;
  uint32_t blue = 0;
  for (uint16_t at = 0; at < FRAME_BYTES; at = (uint16_t)(at + 3)) {
    red += frame[at + RED_AT];
    green += frame[at + GREEN_AT];
    blue += frame[at + BLUE_AT];
  }
  return red * RED_TENTHS + green * GREEN_TENTHS + blue * BLUE_TENTHS;
//.
}

// Dims the whole frame if it would draw more than LIMIT_MILLIAMPS. It looks at the very frame it dims.
static void limit_current() {
  const uint32_t current = light_current();
  if (current <= LIGHT_ALLOWANCE) return;
  const uint8_t factor = (uint8_t)(LIGHT_ALLOWANCE / ((current + 255) >> 8));
  for (uint16_t at = 0; at < FRAME_BYTES; at++) {
    frame[at] = (uint8_t)((uint16_t)((uint16_t)frame[at] * factor) >> 8);
  }
}
//? keepAlive

// Power banks switch off when little is drawn; a frame that would draw less is lifted to a faint glow.
static void keep_supply_awake() {
  if (light_current() >= KEEP_ALIVE_CURRENT) return;
  for (uint16_t at = 0; at < FRAME_BYTES; at++) {
    if (frame[at] < KEEP_ALIVE_DRIVE) frame[at] = KEEP_ALIVE_DRIVE;
  }
}
//.

static void finish_frame() {
  levels_to_drive();
  limit_current();
//? keepAlive
  keep_supply_awake();
//.
}
