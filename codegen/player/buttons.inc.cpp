// ---- Buttons: from a bouncing contact to an action

static Button buttons[BUTTON_COUNT];

//? brightnessStep
// The next brighter step, or the first one after the brightest.
static uint8_t next_brightness() {
  uint8_t next = 0;
  for (uint8_t number = 0; number < sizeof BRIGHTNESS_STEPS; number++) {
    const uint8_t step = READ_8(BRIGHTNESS_STEPS[number]);
    if (step > live.brightness && (next == 0 || step < next)) next = step;
  }
  return next > 0 ? next : READ_8(BRIGHTNESS_STEPS[0]);
}

//.
// What a button sets off.
static void act(uint8_t action) {
  if (action == DO_NOTHING) return;
  picture_changed = true;
//? blackout
  if (live.blackout) {  // first of all somebody wants the light back
    live.blackout = false;
//? host
    tell(TOLD_BLACKOUT, false);
//.
    return;
  }
//.
//? nextLook
  if (action == DO_NEXT_LOOK) {
    enter_look(live.look + 1 == LOOK_COUNT ? 0 : (uint8_t)(live.look + 1));
  }
//.
//? previousLook
  if (action == DO_PREVIOUS_LOOK) {
    enter_look(live.look == 0 ? LOOK_COUNT - 1 : (uint8_t)(live.look - 1));
  }
//.
//? goToLook
  if (action >= DO_GO_TO) enter_look((uint8_t)(action - DO_GO_TO));
//.
//? brightnessStep
  if (action == DO_BRIGHTNESS_STEP) {
//? host
    const uint8_t before = live.brightness;
//.
    live.brightness = next_brightness();
//? host
    if (live.brightness != before) tell(TOLD_BRIGHTNESS, live.brightness);
//.
  }
//.
//? blackout
  if (action == DO_BLACKOUT) {
    live.blackout = true;
//? host
    tell(TOLD_BLACKOUT, true);
//.
  }
//.
//? pause
  if (action == DO_PAUSE) {
    live.paused = !live.paused;
//? host
    tell(TOLD_PAUSE, live.paused);
//.
  }
//.
}

// A contact bounces: a level counts once it has been the same for DEBOUNCE_MS. True when it begins to count.
static bool debounce(Button &button, bool raw) {
  if (raw != button.raw) {
    button.raw = raw;
    button.steady_ms = 0;
    return false;
  }
  if (raw == button.down) return false;
  button.steady_ms++;
  if (button.steady_ms < DEBOUNCE_MS) return false;
  button.down = raw;
  return true;
}

//? gestures
// What time brings about: the end of waiting for a second press, a hold, a button caught in a bag.
static void wait_on(Button &button, uint8_t number) {
  if (button.phase != UNDECIDED && button.phase != ONCE_RELEASED) return;
  button.phase_ms++;
  if (button.phase == ONCE_RELEASED) {
    if (button.phase_ms < DOUBLE_MS) return;
    button.phase = RESTING;
    act(READ_8(BUTTONS[number].press));
  } else if (button.phase_ms > CAUGHT_MS) {
    button.phase = SPENT;
  } else if (button.phase_ms == HOLD_MS && READ_8(BUTTONS[number].hold) != DO_NOTHING) {
    button.phase = SPENT;
    act(READ_8(BUTTONS[number].hold));
  }
}

static void went_down(Button &button, uint8_t number) {
  const uint8_t double_press = READ_8(BUTTONS[number].double_press);
  if (button.phase == ONCE_RELEASED) {
    button.phase = SPENT;
    act(double_press);
  } else if (double_press != DO_NOTHING || READ_8(BUTTONS[number].hold) != DO_NOTHING) {
    button.phase = UNDECIDED;
  } else {
    button.phase = SPENT;
    act(READ_8(BUTTONS[number].press));
  }
}

static void went_up(Button &button, uint8_t number) {
  const bool undecided = button.phase == UNDECIDED;
  const bool has_double = READ_8(BUTTONS[number].double_press) != DO_NOTHING;
  button.phase = undecided && has_double ? ONCE_RELEASED : RESTING;
  if (undecided && !has_double) act(READ_8(BUTTONS[number].press));
}

//.
static void watch_button(uint8_t number, bool raw) {
  Button &button = buttons[number];
//? gestures
  const bool changed = debounce(button, raw);
  wait_on(button, number);
  if (!changed) return;
  button.phase_ms = 0;
  if (button.down) {
    went_down(button, number);
  } else {
    went_up(button, number);
  }
//.
//? !gestures
  if (debounce(button, raw) && button.down) act(READ_8(BUTTONS[number].press));
//.
}
