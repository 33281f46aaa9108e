// ---- Clips: when each is on, how far it has come, and how strongly it shows

//? time
//? endless
// Patterns reckon with nine hours at most; the time of an endless clip then begins anew.
constexpr uint32_t NINE_HOURS_MS = 9UL * 60 * 60 * 1000;

//.
// Milliseconds as seconds in 16.16.
static int32_t seconds(uint32_t ms) {
//? endless
  while (ms >= NINE_HOURS_MS) ms -= NINE_HOURS_MS;
//.
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
//? turn
// How far through something, 0 to 16383.
static int16_t turn_of(uint32_t ms, uint32_t length_ms) {
  return (int16_t)ratio(ms, length_ms, 14);
}

//.
//? fades
// How much a fade lets through, `ms` away from the end of the clip that it belongs to.
static uint8_t fade(uint32_t ms, uint32_t length_ms) {
  return (uint8_t)(ms >= length_ms ? 255 : ms * 255 / length_ms);
}

//.
static void play_clip(const ClipPlan *plan, const LookTime &now) {
  const uint32_t starts_ms = READ_32(plan->starts_ms);
  const uint32_t lasts_ms = READ_32(plan->lasts_ms);
//? endless
  const bool endless = lasts_ms == ENDLESS;
  const uint32_t look_ms = endless ? now.ms : now.loop_ms;
//.
//? !endless
  const uint32_t look_ms = now.loop_ms;
//.
  if (look_ms < starts_ms || look_ms - starts_ms >= lasts_ms) return;
//? clipMs
  const uint32_t ms = look_ms - starts_ms;
//.
  Passage clip;
//? keyed
  clip.ms = ms;
//.
//? time
  clip.time = seconds(ms);
//.
//? turn
//? endless
  clip.turn = endless ? turn_of(now.loop_ms, length_of(now.look)) : turn_of(ms, lasts_ms);
//.
//? !endless
  clip.turn = turn_of(ms, lasts_ms);
//.
//.
  clip.amount = READ_8(plan->opacity);
//? fades
  clip.amount = unit_mul(clip.amount, fade(ms, READ_32(plan->fade_in_ms)));
  clip.amount = unit_mul(clip.amount, fade(lasts_ms - ms, READ_32(plan->fade_out_ms)));
//.
  if (clip.amount > 0) READ_CLIP(plan->draw)(clip);
}

static void play(const ClipPlan *clips, uint8_t count, const LookTime &now) {
  for (uint8_t number = 0; number < count; number++) play_clip(clips + number, now);
}
