// ---- A frame: drawn from `shown` alone

static LookTime drawn;
//? dissolve
static LookTime drawn_leaving;
//.

static LookTime at_tick(const LookClock &clock) {
  const LookTime time = {clock.ms - clock.since_tick, clock.tick_loop_ms, clock.look};
  return time;
}

static void take_moment() {
  picture_changed = false;
  shown.ms = player.now.ms;
  shown.uptime_ms = player.uptime_ms;
  shown.look = player.now.look;
  shown.brightness = player.brightness;
//? blackout
  shown.blackout = player.blackout;
//.
//? pause
  shown.paused = player.paused;
//.
  drawn = at_tick(player.now);
  shown.leaving_look = NO_LOOK;
//? dissolve
  shown.leaving_ms = 0;
  shown.leaving_mix = 0;
  if (player.leaving.look != NO_LOOK) {
    shown.leaving_look = player.leaving.look;
    shown.leaving_ms = player.leaving.ms;
    shown.leaving_mix = (uint8_t)(player.now.ms * 255 / READ_16(LOOKS[player.now.look].dissolve_ms));
    drawn_leaving = at_tick(player.leaving);
  }
//.
}

static void clear_frame() {
  for (uint16_t at = 0; at < FRAME_BYTES; at++) frame[at] = 0;
}

static void draw_levels() {
  clear_frame();
  if (shown.blackout) return;
//? dissolve
  if (shown.leaving_look != NO_LOOK) {
    draw_look(drawn_leaving);
    for (uint16_t at = 0; at < FRAME_BYTES; at++) leaving_frame[at] = frame[at];
    clear_frame();
  }
//.
  draw_look(drawn);
//? dissolve
  if (shown.leaving_look != NO_LOOK) {
    for (uint16_t at = 0; at < FRAME_BYTES; at++) {
      frame[at] = unit_mix(leaving_frame[at], frame[at], shown.leaving_mix);
    }
  }
//.
}

static void draw_frame() {
  draw_levels();
  finish_frame();
}
