// How far x has come from one stop to the next, 0 to 16384.
static int16_t gradient_part(const int16_t *stops, const int32_t *widths, int16_t x, int16_t segment) {
  const uint16_t way = (uint16_t)((uint16_t)x - READ_16(stops[segment]));
  return (int16_t)((way * READ_32(widths[segment])) >> 16);
}
