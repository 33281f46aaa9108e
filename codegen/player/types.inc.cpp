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
//? keyed
  uint32_t ms;     // milliseconds since it began
//.
//? time
  int32_t time;    // seconds since it began, 16.16
//.
//? turn
  int16_t turn;    // 0 to 16383 from its beginning to its end
//.
  uint8_t amount;  // opacity and fades together, 255: it covers
};
typedef void DrawClip(const Passage &clip);
//? clips

// A clip of a look. Times are milliseconds since the look, or its present loop, began.
struct ClipPlan {
  DrawClip *draw;
  uint32_t starts_ms;
  uint32_t lasts_ms;
//? fades
  uint32_t fade_in_ms;
  uint32_t fade_out_ms;
//.
  uint8_t opacity;  // 0 to 255
};
//? endless
// Lasts as long as the look, and counts on over all its loops.
constexpr uint32_t ENDLESS = 0xffffffff;
//.
//.

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
//? places
  const int16_t *next_place;
  int16_t place_x;
  int16_t place_y;
//.
};
//? keyed

// A keyframe: at this time of the clip a parameter has this value, in 1/65536.
struct Key {
  uint32_t at_ms;
  int32_t value;
//? eased
  const int32_t *easing;  // how it moves on to the next one
//.
};
//.
//? buttons

//? gestures
enum ButtonPhase : uint8_t { RESTING, UNDECIDED, ONCE_RELEASED, SPENT };

//.
struct Button {
//? gestures
  uint16_t phase_ms;
  ButtonPhase phase;
//.
  uint8_t steady_ms;
  bool raw;   // pressed at this moment, bounce and all
  bool down;  // pressed for certain
};
//.

// What stands further below.
//? clips
static void play(const ClipPlan *clips, uint8_t count, const LookTime &now);
//.
void enter_look(uint8_t look);
