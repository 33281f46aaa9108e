// ---- The state: which look is on, since when, and how bright

Moment shown;
static Moment live;  // what is true at this millisecond; `shown` follows from frame to frame
static Loop live_loop;
//? dissolve
static Loop leaving_loop;
//.
static bool picture_changed;

static uint32_t length_of(uint8_t look) {
  return READ_32(LOOKS[look].length_ms);
}

// Begins a look anew, also the one that is on.
void enter_look(uint8_t look) {
//? dissolve
  live.leaving_look = READ_16(LOOKS[look].dissolve_ms) > 0 ? live.look : NO_LOOK;
  live.leaving_ms = live.ms;
  leaving_loop = live_loop;
//.
  live.look = look;
  live.ms = 0;
  live_loop = Loop();
  picture_changed = true;
//? host
  tell(TOLD_LOOK, look);
//.
}

static void start_player() {
  live.look = START_LOOK;
  live.brightness = START_BRIGHTNESS;
  live.leaving_look = NO_LOOK;
  picture_changed = true;
}

// `ms` counts on past the loops; at the end of 49.7 days it begins again, and everything with it.
static void advance(uint8_t look, uint32_t &ms, Loop &loop) {
  ms++;
  loop.ms++;
  loop.since_tick++;
  if (loop.ms == length_of(look)) loop.ms = 0;
  if (loop.since_tick == TICK_MS) loop.since_tick = 0;
  if (ms == 0) loop = Loop();
}

static void advance_looks() {
  advance(live.look, live.ms, live_loop);
  if (live_loop.since_tick == 0) picture_changed = true;
//? dissolve
  if (live.leaving_look != NO_LOOK) {
    advance(live.leaving_look, live.leaving_ms, leaving_loop);
    if (live.ms >= READ_16(LOOKS[live.look].dissolve_ms)) {
      live.leaving_look = NO_LOOK;
      picture_changed = true;
    }
  }
//.
//? moveOn
  const uint32_t moves_on_ms = READ_32(LOOKS[live.look].moves_on_ms);
  if (moves_on_ms > 0 && live.ms == moves_on_ms) enter_look(READ_8(LOOKS[live.look].moves_on_to));
//.
}
