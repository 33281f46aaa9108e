// ---- A frame: drawn from `shown` alone

static Loop shown_loop;
//? dissolve
static Loop shown_leaving_loop;
//.

// From here on a frame is drawn, while the player may go on.
static void take_moment() {
  picture_changed = false;
//? dissolve
  if (live.leaving_look != NO_LOOK) {
    live.leaving_mix = (uint8_t)(live.ms * 255 / READ_16(LOOKS[live.look].dissolve_ms));
  }
  shown_leaving_loop = leaving_loop;
//.
  shown_loop = live_loop;
  shown = live;
}

// Draws a look as it was at its latest tick. A loop may be shorter than a tick.
static void draw_at_tick(uint8_t look, uint32_t ms, const Loop &loop) {
  LookTime now = {ms - loop.since_tick, loop.ms, look};
  while (now.loop_ms < loop.since_tick) now.loop_ms += length_of(look);
  now.loop_ms -= loop.since_tick;
  draw_look(now);
}

static void clear_frame() {
  for (uint16_t at = 0; at < FRAME_BYTES; at++) frame[at] = 0;
}

static void draw_levels() {
  clear_frame();
  if (shown.blackout) return;
//? dissolve
  if (shown.leaving_look != NO_LOOK) {
    draw_at_tick(shown.leaving_look, shown.leaving_ms, shown_leaving_loop);
    for (uint16_t at = 0; at < FRAME_BYTES; at++) leaving_frame[at] = frame[at];
    clear_frame();
  }
//.
  draw_at_tick(shown.look, shown.ms, shown_loop);
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
