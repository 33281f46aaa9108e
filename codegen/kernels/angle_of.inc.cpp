// Direction of (x, y) in 1/65536 turns, counter-clockwise from x: a table for one eighth of the circle,
// mirrored for the rest; 0 for (0, 0).
static int16_t angle_of(int32_t y, int32_t x) {
  uint32_t flat = size_of(x);
  uint32_t steep = size_of(y);
  if (flat == 0 && steep == 0) return 0;
  while ((flat | steep) >= 0x20000UL) {
    flat >>= 1;
    steep >>= 1;
  }
  const bool is_steep = steep > flat;
  const uint16_t ratio = (uint16_t)(is_steep ? (flat << 14) / steep : (steep << 14) / flat);
  const uint8_t step = (uint8_t)(ratio >> 8);
  const uint16_t from = READ_16(@angle[step]);
  const uint16_t rise = (uint16_t)(READ_16(@angle[step + 1]) - from);
  int32_t turn = from + (uint16_t)(rise * (ratio & 255u)) / 256u;
  if (is_steep) turn = 16384 - turn;
  if (x < 0) turn = 32768L - turn;
  if (y < 0) return (int16_t)-turn;
  return turn > 32767 ? 32767 : (int16_t)turn;
}
