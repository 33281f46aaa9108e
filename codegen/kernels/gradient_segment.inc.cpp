// Which two stops of a gradient x lies between.
static int16_t gradient_segment(const int16_t *stops, uint8_t segments, int16_t x) {
  uint8_t segment = (uint8_t)(segments - 1);
  while (segment > 0 && (int16_t)READ_16(stops[segment]) > x) segment--;
  return segment;
}
