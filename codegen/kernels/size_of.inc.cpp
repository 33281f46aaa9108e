// A number without its sign; the most negative one has room here too.
static uint32_t size_of(int32_t value) {
  return value < 0 ? 0u - (uint32_t)value : (uint32_t)value;
}
