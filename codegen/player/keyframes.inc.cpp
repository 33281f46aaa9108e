// ---- Keyframes: parameters that change over a clip

//? eased
// How far a value has come, 16.16, when `part` / 65536 of the time between two keys is over.
static int32_t eased(const int32_t *easing, uint16_t part) {
  if (easing == nullptr) return part;  // linear
  const uint8_t step = (uint8_t)(part >> 10);
  const int32_t from = (int32_t)READ_32(easing[step]);
  const int32_t to = (int32_t)READ_32(easing[step + 1]);
  return from + (((to - from) * (int32_t)(part & 1023)) >> 10);
}

//.
//? !overshoot
// way * share / 65536, both 16.16, for a share of 0 to 65536.
static int32_t share_of(int32_t way, int32_t share) {
  if (share == 65536) return way;
  const uint32_t low = (uint32_t)(uint16_t)way * (uint16_t)share;
  return (way >> 16) * share + (int32_t)(low >> 16);
}

//.
// The value of a parameter at this time of its clip, 16.16.
static int32_t value_at(const Key *keys, uint8_t count, uint32_t ms) {
  uint8_t key = (uint8_t)(count - 1);
  while (key > 0 && READ_32(keys[key].at_ms) > ms) key--;
  const uint32_t begins_ms = READ_32(keys[key].at_ms);
  const int32_t from = (int32_t)READ_32(keys[key].value);
  if (key == count - 1 || ms < begins_ms) return from;
  const uint32_t lasts_ms = READ_32(keys[key + 1].at_ms) - begins_ms;
//? eased
  const int32_t share = eased(READ_EASING(keys[key].easing), ratio(ms - begins_ms, lasts_ms, 16));
//.
//? !eased
  const int32_t share = ratio(ms - begins_ms, lasts_ms, 16);
//.
  const int32_t way = (int32_t)READ_32(keys[key + 1].value) - from;
//? overshoot
  const int64_t value = from + (((int64_t)way * share) >> 16);
  return value > INT32_MAX ? INT32_MAX : value < INT32_MIN ? INT32_MIN : (int32_t)value;
//.
//? !overshoot
  return from + share_of(way, share);
//.
}
//? keyedLevel

// A level 0 to 255 as the patterns reckon: 16384 stands for one.
static int16_t level_to_lowp(uint8_t level) {
  return (int16_t)((level * (uint32_t)32768 + 255) / 510);
}
//.
//? clamped

static int32_t clamped(int32_t value, int32_t lowest, int32_t highest) {
  return value < lowest ? lowest : value > highest ? highest : value;
}
//.
