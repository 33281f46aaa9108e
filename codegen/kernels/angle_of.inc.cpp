// Direction of (x, y) in 1/65536 turns, counter-clockwise from x: a table for one eighth of the circle,
// mirrored for the rest; 0 for (0, 0).
static int16_t angle_of(int32_t y, int32_t x) {
  uint32_t longer = size_of(x);
  uint32_t shorter = size_of(y);
  const bool is_steep = shorter > longer;
  if (is_steep) {
    const uint32_t height = shorter;
    shorter = longer;
    longer = height;
  }
  if (longer == 0) return 0;
  while (longer >= 0x20000UL) {
    longer >>= 1;
    shorter >>= 1;
  }
  const uint16_t ratio = (uint16_t)((shorter << 14) / longer);
  const uint8_t step = (uint8_t)(ratio >> 8);
  const uint16_t from = READ_16(@angle[step]);
  const uint16_t rise = (uint16_t)(READ_16(@angle[step + 1]) - from);
  uint16_t turn = (uint16_t)(from + (uint16_t)(rise * (uint8_t)ratio) / 256u);
  if (is_steep) turn = (uint16_t)(16384u - turn);
  if (x < 0) turn = (uint16_t)(32768u - turn);
  if (y < 0) return (int16_t)(0u - turn);
  return turn > 32767u ? (int16_t)32767 : (int16_t)turn;
}
