// Sine of an angle in 1/65536 turns, -16384 to 16384: a quarter wave of 128 steps, with straight lines between.
static int16_t sine_of(uint16_t turn) {
  uint16_t position = turn & 0x3fffu;
  if (turn & 0x4000u) position = (uint16_t)(0x4000u - position);
  const uint8_t step = (uint8_t)(position >> 7);
  const uint16_t from = READ_16(@sine[step]);
  const uint16_t rise = (uint16_t)(READ_16(@sine[step + 1]) - from);
  const int16_t value = (int16_t)(from + (uint16_t)(rise * (position & 127u)) / 128u);
  return (turn & 0x8000u) ? (int16_t)-value : value;
}
