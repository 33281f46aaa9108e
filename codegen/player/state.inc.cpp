// ---- The state: which look is on, since when, and how bright

Moment shown;
static Player player;
static bool picture_changed = true;

static uint32_t length_of(uint8_t look) {
  return READ_32(LOOKS[look].length_ms);
}

static LookClock clock_at_entry(uint8_t look) {
  const LookClock clock = {0, 0, 0, 0, look};
  return clock;
}

void enter_look(uint8_t look) {
//? dissolve
  if (READ_16(LOOKS[look].dissolve_ms) > 0) {
    player.leaving = player.now;
  } else {
    player.leaving.look = NO_LOOK;
  }
//.
  player.now = clock_at_entry(look);
  picture_changed = true;
//? host
  tell(TOLD_LOOK, look);
//.
}

static void start_player() {
  player.now = clock_at_entry(START_LOOK);
//? dissolve
  player.leaving = clock_at_entry(NO_LOOK);
//.
  player.brightness = START_BRIGHTNESS;
}

// A look's clock counts on past its loops; at the end of 49.7 days it begins again, with everything in step.
static void advance(LookClock &clock) {
  clock.ms++;
  clock.loop_ms++;
  clock.since_tick++;
  if (clock.loop_ms == length_of(clock.look) || clock.ms == 0) clock.loop_ms = 0;
  if (clock.since_tick == TICK_MS || clock.ms == 0) clock.since_tick = 0;
  if (clock.since_tick == 0) clock.tick_loop_ms = clock.loop_ms;
}

static void advance_looks() {
  advance(player.now);
  if (player.now.since_tick == 0) picture_changed = true;
//? dissolve
  if (player.leaving.look != NO_LOOK) {
    advance(player.leaving);
    if (player.now.ms >= READ_16(LOOKS[player.now.look].dissolve_ms)) {
      player.leaving.look = NO_LOOK;
      picture_changed = true;
    }
  }
//.
//? moveOn
  const uint32_t moves_on_ms = READ_32(LOOKS[player.now.look].moves_on_ms);
  if (moves_on_ms > 0 && player.now.ms == moves_on_ms) enter_look(READ_8(LOOKS[player.now.look].moves_on_to));
//.
}
