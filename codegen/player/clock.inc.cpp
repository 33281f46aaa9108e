// ---- Time: every millisecond is lived through, even those in which the chip was busy

static uint32_t last_millis;
static uint32_t credit_us;
//? buttons
static uint8_t last_raw_down;
//.

//? buttons
// Everything that can happen in a millisecond, in this order: time, then the buttons.
// Bit b of `raw_down` says whether button b is pressed at this moment.
static void one_millisecond(uint8_t raw_down) {
//.
//? !buttons
static void one_millisecond() {
//.
  live.uptime_ms++;
//? pause
  if (!live.paused) advance_looks();
//.
//? !pause
  advance_looks();
//.
//? buttons
  for (uint8_t number = 0; number < BUTTON_COUNT; number++) {
    watch_button(number, (raw_down & (1 << number)) != 0);
  }
//.
}

//? buttons
static uint8_t read_buttons() {
  uint8_t raw_down = 0;
  for (uint8_t number = 0; number < BUTTON_COUNT; number++) {
//? host
    if (desk_down[number]) raw_down = (uint8_t)(raw_down | 1 << number);
//.
//? !host
    if (digitalRead(READ_8(BUTTONS[number].pin)) == LOW) raw_down = (uint8_t)(raw_down | 1 << number);
//.
  }
  return raw_down;
}

//.
// Milliseconds since the last call, those included that the clock missed while pixels were sent.
static uint32_t milliseconds_due() {
  const uint32_t now = millis();
  uint32_t due = now - last_millis;
  last_millis = now;
  while (credit_us >= 1000) {
    credit_us -= 1000;
    due++;
  }
  return due;
}

// Catches up with the clock. Called between pixels, too, so that a short press always counts however long
// a frame takes. It never disturbs that frame, which is drawn from `shown` alone.
static void watch_the_buttons() {
  uint32_t due = milliseconds_due();
//? buttons
  if (due == 0) return;
  // While a long frame was sent nobody looked: a button counts as down if it was so before or is so now,
  // or else a short press that ends in the meantime would leave no trace.
  const uint8_t raw_down = read_buttons();
  for (; due > 1; due--) one_millisecond((uint8_t)(last_raw_down | raw_down));
  one_millisecond(raw_down);
  last_raw_down = raw_down;
//.
//? !buttons
  for (; due > 0; due--) one_millisecond();
//.
}
