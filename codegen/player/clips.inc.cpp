// ---- Clips: when each is on, how far it has come, and how strongly it shows

//? time
// Milliseconds as seconds in 16.16.
static int32_t seconds(uint32_t ms) {
  const uint32_t whole = ms / 1000;
  const uint32_t rest = ms - whole * 1000;
  return (int32_t)((whole << 16) + (rest << 16) / 1000);
}

//.
//? ratio
// part / whole for part < whole, as that many binary digits behind the point, one after the other.
static uint16_t ratio(uint32_t part, uint32_t whole, uint8_t digits) {
  uint16_t quotient = 0;
  for (; digits > 0; digits--) {
    part <<= 1;
    quotient = (uint16_t)(quotient << 1);
    if (part >= whole) {
      part -= whole;
      quotient |= 1;
    }
  }
  return quotient;
}

//.
//? fades
// How much a fade lets through, `ms` away from the end of the clip that it belongs to.
static uint8_t fade(uint32_t ms, uint32_t length_ms) {
  return (uint8_t)(ms >= length_ms ? 255 : ms * 255 / length_ms);
}

//.
//? ordinary
//? fades
static void play(DrawClip *draw, const LookTime &now, uint32_t starts_ms, uint32_t lasts_ms,
                 uint32_t fade_in_ms, uint32_t fade_out_ms, uint8_t opacity) {
//.
//? !fades
static void play(DrawClip *draw, const LookTime &now, uint32_t starts_ms, uint32_t lasts_ms, uint8_t opacity) {
//.
  if (now.loop_ms < starts_ms || now.loop_ms - starts_ms >= lasts_ms) return;
  const uint32_t ms = now.loop_ms - starts_ms;
  Passage clip;
//? keyed
  clip.ms = ms;
//.
//? time
  clip.time = seconds(ms);
//.
//? turn
  clip.turn = (int16_t)ratio(ms, lasts_ms, 14);
//.
//? fades
  clip.amount = unit_mul(unit_mul(opacity, fade(ms, fade_in_ms)), fade(lasts_ms - ms, fade_out_ms));
//.
//? !fades
  (void)ms;
  clip.amount = opacity;
//.
  if (clip.amount > 0) draw(clip);
}
//.
//? endless
//? ordinary

//.
//? time
constexpr uint32_t NINE_HOURS_MS = 9UL * 60 * 60 * 1000;

//.
// An endless clip counts from the entry of the look, over all its loops.
//? fades
static void play_endless(DrawClip *draw, const LookTime &now, uint32_t starts_ms, uint32_t fade_in_ms,
                         uint8_t opacity) {
//.
//? !fades
static void play_endless(DrawClip *draw, const LookTime &now, uint32_t starts_ms, uint8_t opacity) {
//.
  if (now.ms < starts_ms) return;
  const uint32_t ms = now.ms - starts_ms;
  Passage clip;
//? keyed
  clip.ms = ms;
//.
//? time
  clip.time = seconds(ms % NINE_HOURS_MS);  // the longest time that patterns reckon with
//.
//? turn
  clip.turn = (int16_t)ratio(now.loop_ms, length_of(now.look), 14);
//.
//? fades
  clip.amount = unit_mul(opacity, fade(ms, fade_in_ms));
//.
//? !fades
  (void)ms;
  clip.amount = opacity;
//.
  if (clip.amount > 0) draw(clip);
}
//.
