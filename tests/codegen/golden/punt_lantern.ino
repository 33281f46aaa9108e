// "Punt lantern", for ATmega328P at 16 MHz.
// Made by weftlight 0.1.0 from the piece with the hash 837198d30de11ff1.
//
// Pixels   8 x WS2812B on pin 6
// Buttons  "knob" on pin 2; each joins its pin to ground
// Supply   5 V, limited to 400 mA
// Size     89 bytes of RAM; by estimate 4.2 KB of program and 50 frames a second in the busiest look
// Power    calculated, one loop of each look at the start brightness:
//          66 mA on average, 67 mA at most: "Glow"
//          40 mA on average, 52 mA at most: "Flow"
//
// Before anybody wears it:
// - Lithium cells: protected packs only, with a fuse; never charge them worn, hot, frozen or alone.
// - Short circuits: put a fuse at the battery, below what the thinnest wire carries.
// - Heat: what touches skin stays below 43 C; feel pixels, converter and battery after half an hour.
// - Flashing: no more than three flashes a second; faster flashing can set off seizures.
// - Water: keep batteries and joints dry and high; a coated strip is no diving suit.
// - Hot glue: it burns skin, softens on warm parts and is no insulation.
// These cautions are reminders and no instructions. Local codes and licensed practice come first; ask a
// qualified person where you are not sure.

#if !defined(__AVR__)
#error "This sketch is made for an ATmega328P. Choose a board with that chip, or make the sketch anew for yours."
#endif

#include <stdint.h>
#include <avr/pgmspace.h>
#include <avr/io.h>
#include <avr/interrupt.h>

// Tables stay in program memory, where the chip reads them with instructions of their own.
#define IN_FLASH PROGMEM
#define READ_8(entry) pgm_read_byte(&(entry))
#define READ_16(entry) pgm_read_word(&(entry))
#define READ_32(entry) pgm_read_dword(&(entry))
#define COUNT_OF(table) (sizeof(table) / sizeof((table)[0]))
#define READ_CLIP(entry) reinterpret_cast<DrawClip *>(pgm_read_word(&(entry)))

// ---- SETTINGS: change what you like -----------------------------------------------------------------

constexpr uint16_t START_LOOK = 0;         // the look that it begins with: its number below
constexpr uint16_t START_BRIGHTNESS = 64;  // 0 (dark) to 255 (full)
constexpr uint16_t LIMIT_MILLIAMPS = 400;  // frames that would draw more are dimmed
constexpr uint16_t PIXEL_PIN = 6;          // where the data wire of the pixels is soldered
constexpr uint16_t TICK_MS = 20;           // a new frame this often, if the chip can
constexpr uint16_t DEBOUNCE_MS = 20;       // a contact counts once it is steady for this long

static_assert(START_BRIGHTNESS <= 255, "START_BRIGHTNESS goes from 0 (dark) to 255 (full).");
static_assert(LIMIT_MILLIAMPS >= 1 && LIMIT_MILLIAMPS <= 20000,
              "LIMIT_MILLIAMPS goes from 1 to 20000.");
static_assert(TICK_MS >= 5 && TICK_MS <= 1000, "TICK_MS goes from 5 to 1000.");
static_assert(DEBOUNCE_MS >= 1 && DEBOUNCE_MS <= 250, "DEBOUNCE_MS goes from 1 to 250.");

// ---- LOOKS AND BUTTONS: change lengths, times and what a button does --------------------------------

// The looks, in the order in which a button steps through them.
enum Look : uint8_t {
  look_glow = 0,
  look_flow = 1,
};
constexpr uint8_t LOOK_COUNT = 2;
static_assert(START_LOOK < LOOK_COUNT, "START_LOOK is the number of one of the looks, from 0.");
constexpr uint8_t NO_LOOK = 255;

struct LookPlan {
  uint32_t length_ms;  // then its clips begin anew
};
static const LookPlan LOOKS[LOOK_COUNT] IN_FLASH = {
  {2000},  // look_glow
  {2000},  // look_flow
};

// What a button can do.
enum Action : uint8_t {
  DO_NOTHING,
  DO_NEXT_LOOK,
};

struct ButtonPlan {
  uint8_t pin;  // the button joins this pin to ground
  uint8_t press;
};
constexpr uint8_t BUTTON_COUNT = 1;
static const ButtonPlan BUTTONS[BUTTON_COUNT] IN_FLASH = {
  {2, DO_NEXT_LOOK},  // "knob"
};

// ---- TYPES: leave them; they have to stand before the first function --------------------------------

// Everything that a frame depends on.
struct Moment {
  uint32_t ms;          // since the look was entered
  uint32_t uptime_ms;   // since power-up
  uint32_t leaving_ms;  // the same of the look that is dissolving away
  uint8_t look;
  uint8_t brightness;
  uint8_t blackout;
  uint8_t paused;
  uint8_t leaving_look;  // NO_LOOK: none
  uint8_t leaving_mix;   // how far the new look has come; 255 would be all the way
};
extern Moment shown;  // what is on the pixels, or about to be

// Where a look stands in its present loop, and since its latest tick, in milliseconds.
struct Loop {
  uint32_t ms;
  uint16_t since_tick;
};

// A look at one of its ticks: what a frame is drawn from.
struct LookTime {
  uint32_t ms;
  uint32_t loop_ms;
  uint8_t look;
};

// How far a clip has come, as its pattern wants to know it.
struct Passage {
  int32_t time;    // seconds since it began, 16.16
  uint8_t amount;  // opacity and fades together, 255: it covers
};
typedef void DrawClip(const Passage &clip);

// A clip of a look. Times are milliseconds since the look, or its present loop, began.
struct ClipPlan {
  DrawClip *draw;
  uint32_t starts_ms;
  uint32_t lasts_ms;
  uint32_t fade_in_ms;
  uint32_t fade_out_ms;
  uint8_t opacity;  // 0 to 255
};

// A zone is a list of spans: `count` pixels, evenly spaced on the line and in the zone's own numbering.
struct Span {
  uint16_t count;
  uint16_t pixel;
  int16_t pixel_step;
  uint16_t index;
  int16_t index_step;
};

// A way through the pixels of a zone.
struct Walk {
  const Span *next;
  uint16_t left;
  uint16_t pixel;
  uint16_t index;
  int16_t pixel_step;
  int16_t index_step;
};

struct Button {
  uint8_t steady_ms;
  bool raw;   // pressed at this moment, bounce and all
  bool down;  // pressed for certain
};

// What stands further below.
static void play(const ClipPlan *clips, uint8_t count, const LookTime &now);
void enter_look(uint8_t look);

static void clip_still_all(const Passage &clip);
static void clip_millrace_all(const Passage &clip);

// ---- LOOKS: what is on, and when --------------------------------------------------------------------

// What each look shows: its clips, the bottom one first.
// Clip, starts, lasts, fades in, fades out, opacity.
static void draw_look(const LookTime &now) {
  switch (now.look) {
    case look_glow: {  // "Glow"
      static const ClipPlan clips[] IN_FLASH = {
        {clip_still_all, 0, 2000, 0, 0, 255},
      };
      play(clips, COUNT_OF(clips), now);
      break;
    }
    case look_flow: {  // "Flow"
      static const ClipPlan clips[] IN_FLASH = {
        {clip_millrace_all, 0, 2000, 500, 0, 255},
      };
      play(clips, COUNT_OF(clips), now);
      break;
    }
  }
}

// ---- MY CODE: yours ---------------------------------------------------------------------------------

// Runs once in every pass of loop(); keep it short, and without delay(). You may read `shown` and call
// enter_look(look_glow). What stands between the two marks is kept when the sketch is made anew.
static void my_code() {
  // >>> my code
  // <<< my code
}

// ---- MACHINERY BELOW: leave it ----------------------------------------------------------------------

constexpr uint16_t PIXEL_COUNT = 8;
constexpr uint16_t FRAME_BYTES = 3 * PIXEL_COUNT;
constexpr uint8_t RED_AT = 1;  // in the three bytes that a pixel is sent
constexpr uint8_t GREEN_AT = 0;
constexpr uint8_t BLUE_AT = 2;
constexpr uint16_t WIRE_US = 240;   // to send a frame
constexpr uint16_t LATCH_US = 300;  // the wire rests between frames

// Currents in tenths of a milliamp: the chip, a dark pixel, and each colour of a pixel at its fullest.
constexpr uint32_t CHIP_TENTHS = 104;
constexpr uint32_t DARK_TENTHS = 7;
constexpr uint32_t COLOUR_TENTHS = 200;
constexpr uint32_t BASE_TENTHS = CHIP_TENTHS + PIXEL_COUNT * DARK_TENTHS;

// What light may draw beside that, in 1/2550 mA: one step of one colour is its current in tenths.
constexpr uint32_t LIMIT_TENTHS = LIMIT_MILLIAMPS * 10UL;
constexpr uint32_t LIGHT_ALLOWANCE = LIMIT_TENTHS > BASE_TENTHS ? (LIMIT_TENTHS - BASE_TENTHS) * 255 : 0;

static uint8_t frame[FRAME_BYTES];  // red, green, blue of each pixel; in the end what it is sent

// ---- Pixels: the one door through which data leaves -------------------------------------------------
#if !defined(__AVR_ATmega328P__) && !defined(__AVR_ATmega328__)
#error "This sketch is made for an ATmega328P. Choose that chip, or generate the sketch again for yours."
#endif
#if F_CPU != 16000000UL
#error "The pixels are timed by counting the cycles of a 16 MHz clock. Set the clock to 16 MHz."
#endif
static_assert(PIXEL_PIN <= 19, "PIXEL_PIN must be a pin from 0 to 19: other pins cannot send pixel data.");

// Pins 0 to 7 are bits of port D, 8 to 13 of port B, 14 to 19 (A0 to A5) of port C.
const uint8_t PIXEL_BIT = 1 << (PIXEL_PIN < 8 ? PIXEL_PIN : PIXEL_PIN < 14 ? PIXEL_PIN - 8 : PIXEL_PIN - 14);
// Where OUT finds PORTD, PORTB and PORTC: ATmega328P datasheet, register summary.
const uint8_t PIXEL_PORT = PIXEL_PIN < 8 ? 0x0B : PIXEL_PIN < 14 ? 0x05 : 0x08;

// Each bit is a pulse: short for 0, long for 1, one every 20 cycles (1.25 us), highest bit first.
//
//   cycle  0    5         14    20
//     0    |####|_______________|       high for  5 cycles, 312.5 ns; low for 15, 937.5 ns
//     1    |#############|______|       high for 14 cycles, 875 ns;   low for  6, 375 ns
//
// No interrupt may stretch a pulse, so they wait until the last byte is out. Every bit takes the same 20
// cycles, the last one of a byte too. Behind each instruction stand the cycles of its bit that it takes.
static void send_pixels(uint8_t, const uint8_t *bytes, uint16_t byteCount) {
  if (byteCount == 0) return;
  const uint8_t status = SREG;
  cli();
  const uint8_t low = (uint8_t)(_SFR_IO8(PIXEL_PORT) & ~PIXEL_BIT);  // the port's other pins stay as they are
  const uint8_t high = low | PIXEL_BIT;
  uint8_t data = *bytes++;
  uint8_t bits = 8;
  uint8_t level;
  asm volatile(
      "rjmp next_bit_%=        \n\t"
      "last_bit_%=:            \n\t"  //          of a byte: fetch the next one in passing
      "ldi  %[bits], 8         \n\t"  //  9
      "rjmp .+0                \n\t"  // 10 - 11  wait
      "rjmp .+0                \n\t"  // 12 - 13  wait
      "out  %[port], %[low]    \n\t"  // 14       a 1 ends here
      "sbiw %[left], 1         \n\t"  // 15 - 16
      "breq all_sent_%=        \n\t"  // 17       1 cycle if not taken
      "ld   %[data], %a[next]+ \n\t"  // 18 - 19
      "next_bit_%=:            \n\t"
      "out  %[port], %[high]   \n\t"  //  0       every pulse begins here
      "mov  %[level], %[low]   \n\t"  //  1
      "sbrc %[data], 7         \n\t"  //  2       if the bit is 0, skip the next: 2 cycles either way
      "mov  %[level], %[high]  \n\t"  //  3
      "lsl  %[data]            \n\t"  //  4
      "out  %[port], %[level]  \n\t"  //  5       a 0 ends here
      "dec  %[bits]            \n\t"  //  6
      "breq last_bit_%=        \n\t"  //  7       1 cycle if not taken, 2 if taken
      "rjmp .+0                \n\t"  //  8 -  9  wait
      "rjmp .+0                \n\t"  // 10 - 11  wait
      "rjmp .+0                \n\t"  // 12 - 13  wait
      "out  %[port], %[low]    \n\t"  // 14       a 1 ends here
      "rjmp .+0                \n\t"  // 15 - 16  wait
      "nop                     \n\t"  // 17       wait
      "rjmp next_bit_%=        \n\t"  // 18 - 19
      "all_sent_%=:            \n\t"
      : [data] "+r"(data), [bits] "+d"(bits), [level] "=&r"(level), [left] "+w"(byteCount), [next] "+e"(bytes)
      : [port] "I"(PIXEL_PORT), [high] "r"(high), [low] "r"(low)
      : "memory");
  SREG = status;
}

// ---- The state: which look is on, since when, and how bright ----------------------------------------

Moment shown;
static Moment live;  // what is true at this millisecond; `shown` follows from frame to frame
static Loop live_loop;
static bool picture_changed;

static uint32_t length_of(uint8_t look) {
  return READ_32(LOOKS[look].length_ms);
}

// Begins a look anew, also the one that is on.
void enter_look(uint8_t look) {
  live.look = look;
  live.ms = 0;
  live_loop = Loop();
  picture_changed = true;
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
}

// ---- Buttons: from a bouncing contact to an action --------------------------------------------------

static Button buttons[BUTTON_COUNT];

// What a button sets off.
static void act(uint8_t action) {
  if (action == DO_NOTHING) return;
  picture_changed = true;
  if (action == DO_NEXT_LOOK) {
    enter_look(live.look + 1 == LOOK_COUNT ? 0 : (uint8_t)(live.look + 1));
  }
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

static void watch_button(uint8_t number, bool raw) {
  Button &button = buttons[number];
  if (debounce(button, raw) && button.down) act(READ_8(BUTTONS[number].press));
}

// ---- Time: every millisecond is lived through, even those in which the chip was busy ----------------

static uint32_t last_millis;
static uint32_t credit_us;
static uint8_t last_raw_down;

// Everything that can happen in a millisecond, in this order: time, then the buttons.
// Bit b of `raw_down` says whether button b is pressed at this moment.
static void one_millisecond(uint8_t raw_down) {
  live.uptime_ms++;
  advance_looks();
  for (uint8_t number = 0; number < BUTTON_COUNT; number++) {
    watch_button(number, (raw_down & (1 << number)) != 0);
  }
}

static uint8_t read_buttons() {
  uint8_t raw_down = 0;
  for (uint8_t number = 0; number < BUTTON_COUNT; number++) {
    if (digitalRead(READ_8(BUTTONS[number].pin)) == LOW) raw_down = (uint8_t)(raw_down | 1 << number);
  }
  return raw_down;
}

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
  if (due == 0) return;
  // While a long frame was sent nobody looked: a button counts as down if it was so before or is so now,
  // or else a short press that ends in the meantime would leave no trace.
  const uint8_t raw_down = read_buttons();
  for (; due > 1; due--) one_millisecond((uint8_t)(last_raw_down | raw_down));
  one_millisecond(raw_down);
  last_raw_down = raw_down;
}

// ---- Blending: laying a clip's pixel on what is there already ---------------------------------------

// Two shares, 0 to 255 each, multiplied: 255 stands for one and is exact.
static uint8_t unit_mul(uint8_t a, uint8_t b) {
  return (uint8_t)((uint16_t)((uint16_t)a * b + a) >> 8);
}

// From `under` (amount 0) to `over` (amount 255), both exact.
static uint8_t unit_mix(uint8_t under, uint8_t over, uint8_t amount) {
  const uint16_t kept = (uint16_t)((uint16_t)under * (uint16_t)(256 - amount));
  const uint16_t laid = (uint16_t)((uint16_t)over * (uint16_t)(amount + 1));
  return (uint8_t)((uint16_t)(kept + laid) >> 8);
}

static void lay_normal(uint16_t pixel, uint8_t red, uint8_t green, uint8_t blue, uint8_t amount) {
  uint8_t *at = frame + 3 * pixel;
  at[0] = unit_mix(at[0], red, amount);
  at[1] = unit_mix(at[1], green, amount);
  at[2] = unit_mix(at[2], blue, amount);
}

// ---- Zones: which pixels a clip plays on ------------------------------------------------------------

static Walk start_walk(const Span *zone) {
  const Walk at = {zone, 0, 0, 0, 0, 0};
  return at;
}

// Steps to the next pixel of the zone; false when there is none left.
static bool next_pixel(Walk &at) {
  watch_the_buttons();
  if (at.left == 0) {
    at.left = READ_16(at.next->count);
    if (at.left == 0) return false;
    at.pixel = READ_16(at.next->pixel);
    at.pixel_step = (int16_t)READ_16(at.next->pixel_step);
    at.index = READ_16(at.next->index);
    at.index_step = (int16_t)READ_16(at.next->index_step);
    at.next++;
  } else {
    at.pixel = (uint16_t)(at.pixel + (uint16_t)at.pixel_step);
    at.index = (uint16_t)(at.index + (uint16_t)at.index_step);
  }
  at.left--;
  return true;
}

// ---- Clips: when each is on, how far it has come, and how strongly it shows -------------------------

// Milliseconds as seconds in 16.16.
static int32_t seconds(uint32_t ms) {
  const uint32_t whole = ms / 1000;
  const uint32_t rest = ms - whole * 1000;
  return (int32_t)((whole << 16) + (rest << 16) / 1000);
}

// How much a fade lets through, `ms` away from the end of the clip that it belongs to.
static uint8_t fade(uint32_t ms, uint32_t length_ms) {
  return (uint8_t)(ms >= length_ms ? 255 : ms * 255 / length_ms);
}

static void play_clip(const ClipPlan *plan, const LookTime &now) {
  const uint32_t starts_ms = READ_32(plan->starts_ms);
  const uint32_t lasts_ms = READ_32(plan->lasts_ms);
  const uint32_t look_ms = now.loop_ms;
  if (look_ms < starts_ms || look_ms - starts_ms >= lasts_ms) return;
  const uint32_t ms = look_ms - starts_ms;
  Passage clip;
  clip.time = seconds(ms);
  clip.amount = READ_8(plan->opacity);
  clip.amount = unit_mul(clip.amount, fade(ms, READ_32(plan->fade_in_ms)));
  clip.amount = unit_mul(clip.amount, fade(lasts_ms - ms, READ_32(plan->fade_out_ms)));
  if (clip.amount > 0) READ_CLIP(plan->draw)(clip);
}

static void play(const ClipPlan *clips, uint8_t count, const LookTime &now) {
  for (uint8_t number = 0; number < count; number++) play_clip(clips + number, now);
}

// ---- Tables -----------------------------------------------------------------------------------------

// Where the colours of gradient water stand, 0 to 16384.
static const int16_t stops_water[] IN_FLASH = {
  0, 7373, 13107, 16384,
};

// One over the distance of neighbouring stops, in 1/65536.
static const int32_t widths_water[] IN_FLASH = {
  145631, 187258, 327660,
};

// Red, green and blue at each stop of water, 0 to 16384.
static const int16_t colours_water[] IN_FLASH = {
  129, 1221, 1992, 900, 6811, 8610, 8160, 13750, 12465, 15677, 15484, 14264,
};

// Zone "all": count, first pixel and step, first index and step; a count of 0 ends it.
static const Span zone_all[] IN_FLASH = {
  {8, 0, 1, 0, 1},
  {0, 0, 0, 0, 0},
};

// ---- Patterns ---------------------------------------------------------------------------------------

// floor(a * b / 16384): the product of two numbers with 14 fraction bits. The chip's fractional multiply
// shifts left by one on the way, so that the wanted bits come out in whole bytes. 25 cycles.
static int16_t mul_q14(int16_t a, int16_t b) {
  int16_t result;
  uint8_t low, zero;
  asm("clr %[zero]\n\t"
      "fmuls %B[a], %B[b]\n\t"       // high times high: bytes 2 and 3
      "movw %A[result], r0\n\t"
      "fmul %A[a], %A[b]\n\t"        // low times low: its carry reaches byte 2
      "adc %A[result], %[zero]\n\t"
      "mov %[low], r1\n\t"
      "fmulsu %B[a], %A[b]\n\t"      // the two mixed products: bytes 1 and 2
      "sbc %B[result], %[zero]\n\t"
      "add %[low], r0\n\t"
      "adc %A[result], r1\n\t"
      "adc %B[result], %[zero]\n\t"
      "fmulsu %B[b], %A[a]\n\t"
      "sbc %B[result], %[zero]\n\t"
      "add %[low], r0\n\t"
      "adc %A[result], r1\n\t"
      "adc %B[result], %[zero]\n\t"
      "lsl %[low]\n\t"               // one more bit to the left: 14 fraction bits in all
      "rol %A[result]\n\t"
      "rol %B[result]\n\t"
      "clr __zero_reg__"
      : [result] "=&r"(result), [low] "=&r"(low), [zero] "=&r"(zero)
      : [a] "a"(a), [b] "a"(b));
  return result;
}

// A number without its sign; the most negative one has room here too.
static uint32_t size_of(int32_t value) {
  return value < 0 ? 0u - (uint32_t)value : (uint32_t)value;
}

// a * 2^bits / b, cut towards 0: long division, one binary digit at a time; 0 where b is 0.
static int32_t ratio_of(int32_t a, int32_t b, uint8_t bits) {
  if (b == 0) return 0;
  const uint32_t divisor = size_of(b);
  uint32_t result = size_of(a) / divisor;
  uint32_t rest = size_of(a) % divisor;
  for (; bits > 0; bits--) {
    rest <<= 1;
    result <<= 1;
    if (rest >= divisor) {
      rest -= divisor;
      result |= 1u;
    }
  }
  return (int32_t)((a < 0) != (b < 0) ? 0u - result : result);
}

// 0 to 1 in 14 fraction bits as a level; what lies outside is black or full.
static uint8_t level_of_lowp(int16_t x) {
  if (x < 0) return 0;
  if (x > 16383) return 255;
  return (uint8_t)((uint16_t)((uint16_t)x << 2) >> 8);
}

// Which two stops of a gradient x lies between.
static int16_t gradient_segment(const int16_t *stops, uint8_t segments, int16_t x) {
  uint8_t segment = (uint8_t)(segments - 1);
  while (segment > 0 && (int16_t)READ_16(stops[segment]) > x) segment--;
  return segment;
}

// How far x has come from one stop to the next, 0 to 16384.
static int16_t gradient_part(const int16_t *stops, const int32_t *widths, int16_t x, int16_t segment) {
  const uint16_t way = (uint16_t)((uint16_t)x - READ_16(stops[segment]));
  return (int16_t)((way * READ_32(widths[segment])) >> 16);
}

// One channel between two stops; `colours` points at the channel of the first.
static int16_t gradient_colour(const int16_t *colours, int16_t segment, int16_t part) {
  const int16_t *stop = colours + 3 * segment;
  const int16_t from = (int16_t)READ_16(stop[0]);
  const int16_t to = (int16_t)READ_16(stop[3]);
  return (int16_t)(from + mul_q14((int16_t)(to - from), part));
}

// Pattern "still/1" on zone "all", 8 pixels: tint #f0a030.
static void clip_still_all(const Passage &clip) {
  for (Walk at = start_walk(zone_all); next_pixel(at);) {
    lay_normal(at.pixel, 240, 160, 48, clip.amount);
  }
}

// Pattern "millrace/1" on zone "all", 8 pixels.
static void clip_millrace_all(const Passage &clip) {
  const int32_t time = clip.time;
  const uint16_t v_flow = (uint16_t)ratio_of(time, 262144, 16);
  for (Walk at = start_walk(zone_all); next_pixel(at);) {
    const uint16_t index = at.index;
    const uint16_t v_moved = (uint16_t)((uint16_t)(((uint32_t)index << 29) >> 16) - v_flow);
    const int16_t v_1 = (int16_t)(v_moved >> 2);
    const int16_t v_2 = gradient_segment(stops_water, 3, v_1);
    const int16_t v_3 = gradient_part(stops_water, widths_water, v_1, v_2);
    lay_normal(at.pixel,
               level_of_lowp(gradient_colour(colours_water + 0, v_2, v_3)),
               level_of_lowp(gradient_colour(colours_water + 1, v_2, v_3)),
               level_of_lowp(gradient_colour(colours_water + 2, v_2, v_3)),
               clip.amount);
  }
}

// ---- Output: from levels to what the pixels are sent, in place --------------------------------------

// How much light each level stands for, 0 to 65280.
static const uint16_t GAMMA[256] IN_FLASH = {
  0, 20, 40, 59, 79, 99, 119, 139, 159, 178, 198, 218, 240, 263, 287, 312,
  338, 366, 395, 425, 457, 490, 524, 559, 596, 635, 674, 715, 758, 802, 848, 894,
  943, 993, 1044, 1097, 1152, 1208, 1265, 1324, 1385, 1448, 1511, 1577, 1644, 1713, 1784, 1856,
  1929, 2005, 2082, 2161, 2242, 2324, 2408, 2494, 2582, 2671, 2762, 2855, 2950, 3046, 3145, 3245,
  3347, 3451, 3556, 3664, 3774, 3885, 3998, 4113, 4230, 4349, 4470, 4593, 4718, 4845, 4973, 5104,
  5237, 5371, 5508, 5647, 5787, 5930, 6075, 6222, 6371, 6521, 6674, 6829, 6986, 7146, 7307, 7470,
  7636, 7803, 7973, 8145, 8319, 8495, 8674, 8854, 9037, 9222, 9409, 9598, 9789, 9983, 10179, 10377,
  10577, 10780, 10985, 11192, 11401, 11613, 11826, 12043, 12261, 12482, 12705, 12930, 13158, 13388, 13620, 13854,
  14091, 14331, 14572, 14816, 15063, 15311, 15563, 15816, 16072, 16330, 16591, 16854, 17120, 17388, 17658, 17931,
  18206, 18484, 18764, 19047, 19332, 19619, 19910, 20202, 20497, 20795, 21095, 21397, 21702, 22010, 22320, 22633,
  22948, 23266, 23586, 23909, 24234, 24562, 24893, 25226, 25562, 25900, 26241, 26585, 26931, 27280, 27631, 27985,
  28342, 28701, 29063, 29427, 29795, 30164, 30537, 30912, 31290, 31671, 32054, 32440, 32828, 33220, 33614, 34011,
  34410, 34812, 35217, 35625, 36035, 36448, 36864, 37283, 37704, 38129, 38556, 38985, 39418, 39853, 40291, 40732,
  41176, 41622, 42072, 42524, 42979, 43436, 43897, 44361, 44827, 45296, 45768, 46243, 46720, 47201, 47684, 48171,
  48660, 49152, 49647, 50145, 50646, 51149, 51656, 52165, 52678, 53193, 53711, 54233, 54757, 55284, 55814, 56347,
  56883, 57422, 57964, 58508, 59056, 59607, 60161, 60718, 61277, 61840, 62406, 62975, 63547, 64121, 64699, 65280,
};

// Light 0 to 65280 times a factor in 1/256.
static inline uint16_t scale_light(uint16_t light, uint16_t factor) {
  if (factor == 256) return light;
#if defined(__AVR_HAVE_MUL__)
  const uint8_t small = (uint8_t)factor;
  uint16_t scaled;
  asm("mul %A[light], %[small]\n\t"
      "mov %A[scaled], r1\n\t"
      "mul %B[light], %[small]\n\t"
      "add %A[scaled], r0\n\t"
      "mov %B[scaled], r1\n\t"
      "clr __zero_reg__\n\t"
      "adc %B[scaled], __zero_reg__"
      : [scaled] "=&r"(scaled)
      : [light] "r"(light), [small] "r"(small));
  return scaled;
#else
  return (uint16_t)(((uint32_t)light * factor) >> 8);
#endif
}

// A level of 0 to 255 is what the eye sees; the pixel wants to know how much light that is.
static uint8_t drive_of(uint8_t level, uint16_t factor) {
  const uint16_t light = scale_light(READ_16(GAMMA[level]), factor);
  return (uint8_t)((uint16_t)(light + 128) >> 8);
}

static void levels_to_drive() {
  const uint16_t factor = (uint16_t)(shown.brightness + (shown.brightness >> 7));
  for (uint16_t at = 0; at < FRAME_BYTES; at = (uint16_t)(at + 3)) {
    uint8_t *pixel = frame + at;
    const uint8_t red = drive_of(pixel[0], factor);
    const uint8_t green = drive_of(pixel[1], factor);
    const uint8_t blue = drive_of(pixel[2], factor);
    pixel[RED_AT] = red;
    pixel[GREEN_AT] = green;
    pixel[BLUE_AT] = blue;
    watch_the_buttons();
  }
}

// What the light in the frame draws, in 1/2550 mA.
static uint32_t light_current() {
  uint32_t sum = 0;
  for (uint16_t at = 0; at < FRAME_BYTES; at++) sum += frame[at];
  return sum * COLOUR_TENTHS;
}

// Dims the whole frame if it would draw more than LIMIT_MILLIAMPS. It looks at the very frame it dims.
static void limit_current() {
  const uint32_t current = light_current();
  if (current <= LIGHT_ALLOWANCE) return;
  const uint8_t factor = (uint8_t)(LIGHT_ALLOWANCE / ((current + 255) >> 8));
  for (uint16_t at = 0; at < FRAME_BYTES; at++) {
    frame[at] = (uint8_t)((uint16_t)((uint16_t)frame[at] * factor) >> 8);
  }
}

static void finish_frame() {
  levels_to_drive();
  limit_current();
}

// ---- A frame: drawn from `shown` alone --------------------------------------------------------------

static Loop shown_loop;

// From here on a frame is drawn, while the player may go on.
static void take_moment() {
  picture_changed = false;
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
  draw_at_tick(shown.look, shown.ms, shown_loop);
}

static void draw_frame() {
  draw_levels();
  finish_frame();
}

// ---- The sketch itself ------------------------------------------------------------------------------

// While the pixels are sent, interrupts are off and the chip's clock stands still for a part of the time.
// How long the sending takes is known, so what the clock has missed is given back to it.
static void send_frame() {
  static uint32_t sent_us;
  while (micros() - sent_us < LATCH_US) watch_the_buttons();
  const uint32_t before_us = micros();
  send_pixels(0, frame, FRAME_BYTES);
  sent_us = micros();
  const uint32_t measured_us = sent_us - before_us;
  if (measured_us < WIRE_US) credit_us += WIRE_US - measured_us;
}

void setup() {
  pinMode(PIXEL_PIN, OUTPUT);
  digitalWrite(PIXEL_PIN, LOW);
  for (uint8_t number = 0; number < BUTTON_COUNT; number++) pinMode(READ_8(BUTTONS[number].pin), INPUT_PULLUP);
  start_player();
}

void loop() {
  watch_the_buttons();
  my_code();
  if (!picture_changed) return;
  take_moment();
  draw_frame();
  send_frame();
}
