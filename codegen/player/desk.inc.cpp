// What a board would bring, for the desk: a clock that a script moves on, and contacts that it closes.

static uint32_t desk_millis;
static bool desk_down[BUTTON_COUNT + 1];

static uint32_t millis() {
  return desk_millis;
}

// What the player tells about one millisecond. At most one thing a button, and a look that moved on.
enum Told : uint8_t { TOLD_LOOK, TOLD_BRIGHTNESS, TOLD_BLACKOUT, TOLD_PAUSE };
struct Tale {
  Told kind;
  uint8_t value;
};
static Tale told[BUTTON_COUNT + 1];
static uint8_t told_count;

static void tell(Told kind, uint8_t value) {
  told[told_count].kind = kind;
  told[told_count].value = value;
  told_count++;
}
