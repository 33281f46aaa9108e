// Any number with 16 fraction bits as a level; what lies outside 0 to 1 is black or full.
static uint8_t level_of_mediump(int32_t x) {
  if (x < 0) return 0;
  if (x > 65535) return 255;
  return (uint8_t)((uint16_t)x >> 8);
}
