// ---- Zones: which pixels a clip plays on

//? places
static Walk start_walk(const Span *zone, const int16_t *places) {
  const Walk at = {zone, 0, 0, 0, 0, 0, places, 0, 0};
  return at;
}
//.
//? !places
static Walk start_walk(const Span *zone) {
  const Walk at = {zone, 0, 0, 0, 0, 0};
  return at;
}
//.

// Steps to the next pixel of the zone; false when there is none left.
static bool next_pixel(Walk &at) {
  watch_the_buttons();
  if (at.left == 0) {
    at.left = READ_16(at.next->count);
    if (at.left == 0) return false;
    at.pixel = READ_16(at.next->pixel);
    at.pixel_step = (int16_t)READ_16(at.next->pixel_step);
    at.index = READ_16(at.next->index);
    at.index_step = (int16_t)READ_16(at.next->index_step);
    at.next++;
  } else {
    at.pixel = (uint16_t)(at.pixel + (uint16_t)at.pixel_step);
    at.index = (uint16_t)(at.index + (uint16_t)at.index_step);
  }
  at.left--;
//? places
  if (at.next_place != nullptr) {
    at.place_x = (int16_t)READ_16(at.next_place[0]);
    at.place_y = (int16_t)READ_16(at.next_place[1]);
    at.next_place += 2;
  }
//.
  return true;
}
