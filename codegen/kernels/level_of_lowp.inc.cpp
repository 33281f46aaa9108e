// 0 to 1 in 14 fraction bits as a level; what lies outside is black or full.
static uint8_t level_of_lowp(int16_t x) {
  if (x < 0) return 0;
  if (x > 16383) return 255;
  return (uint8_t)((uint16_t)((uint16_t)x << 2) >> 8);
}
