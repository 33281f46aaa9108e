// One channel between two stops; `colours` points at the channel of the first.
static int16_t gradient_colour(const int16_t *colours, int16_t segment, int16_t part) {
  const int16_t *stop = colours + 3 * segment;
  const int16_t from = (int16_t)READ_16(stop[0]);
  const int16_t to = (int16_t)READ_16(stop[3]);
  return (int16_t)(from + mul_q14((int16_t)(to - from), part));
}
