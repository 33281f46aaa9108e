// ---- On the desk: the same player without a chip

static void usage() {
  fputs("usage: PROG frames [--brightness N] LOOK MS...\n"
        "       PROG play [--start N]   (reads lines: MS down|up [BUTTON], MS end)\n",
        stderr);
}

// A whole number from 0 to `highest`, or -1.
static int64_t number_from(const char *text, int64_t highest) {
  int64_t number = 0;
  if (*text == 0) return -1;
  for (; *text != 0; text++) {
    if (*text < '0' || *text > '9') return -1;
    number = number * 10 + (*text - '0');
    if (number > highest) return -1;
  }
  return number;
}

// Where a name stands in a list, or -1.
static int index_of(const char *name, const char *const *names, int count) {
  for (int index = 0; index < count; index++) {
    if (strcmp(name, names[index]) == 0) return index;
  }
  return -1;
}

static Loop loop_at(uint8_t look, uint32_t ms) {
  const Loop loop = {ms % length_of(look), (uint16_t)(ms % TICK_MS)};
  return loop;
}

// Any moment at all, whether the buttons can bring it about or not.
static void draw_moment(const Moment &moment) {
  shown = moment;
  shown_loop = loop_at(moment.look, moment.ms);
//? dissolve
  if (moment.leaving_look != NO_LOOK) shown_leaving_loop = loop_at(moment.leaving_look, moment.leaving_ms);
//.
  draw_frame();
}

static void print_frame() {
  for (uint16_t at = 0; at < FRAME_BYTES; at++) printf("%02x", frame[at]);
  printf("\n");
}

//? bundle
// One line of the bundle's `moments`, without the number of the piece.
bool show_line(const char *numbers) {
  unsigned ms, look, brightness, blackout, leaving_look, leaving_ms, leaving_mix;
  const int read = sscanf(numbers, "%u %u %u %u %u %u %u", &look, &ms, &brightness, &blackout, &leaving_look,
                          &leaving_ms, &leaving_mix);
  if (read != 7 || look >= LOOK_COUNT) return false;
  Moment moment = Moment();
  moment.ms = ms;
  moment.look = (uint8_t)look;
  moment.brightness = (uint8_t)brightness;
  moment.blackout = (uint8_t)blackout;
  moment.leaving_look = (uint8_t)leaving_look;
  moment.leaving_ms = leaving_ms;
  moment.leaving_mix = (uint8_t)leaving_mix;
  draw_moment(moment);
  print_frame();
  return true;
}

//.
static int frames(int argc, char **argv) {
  int at = 0;
  int64_t brightness = START_BRIGHTNESS;
  if (argc >= 2 && strcmp(argv[0], "--brightness") == 0) {
    brightness = number_from(argv[1], 255);
    at = 2;
  }
  const int look = at < argc ? index_of(argv[at], LOOK_NAMES, LOOK_COUNT) : -1;
  if (look < 0 || brightness < 0) {
    usage();
    return 2;
  }
  for (at++; at < argc; at++) {
    const int64_t ms = number_from(argv[at], UINT32_MAX);
    if (ms < 0) {
      usage();
      return 2;
    }
    Moment moment = Moment();
    moment.ms = (uint32_t)ms;
    moment.look = (uint8_t)look;
    moment.brightness = (uint8_t)brightness;
    moment.leaving_look = NO_LOOK;
    draw_moment(moment);
    printf("%u ", (unsigned)ms);
    print_frame();
  }
  return 0;
}

static void print_told(unsigned ms, Told kind) {
  for (uint8_t number = 0; number < told_count; number++) {
    const uint8_t value = told[number].value;
    if (told[number].kind != kind) continue;
    if (kind == TOLD_LOOK) printf("%u look %s\n", ms, LOOK_NAMES[value]);
    if (kind == TOLD_BRIGHTNESS) printf("%u brightness %u\n", ms, value);
    if (kind == TOLD_BLACKOUT) printf("%u blackout %s\n", ms, value ? "on" : "off");
    if (kind == TOLD_PAUSE) printf("%u pause %s\n", ms, value ? "on" : "off");
  }
}

// Lets the clock run up to a millisecond of the script, one step after another.
static void play_until(unsigned &ms, unsigned end) {
  while (ms < end) {
    ms++;
    told_count = 0;
    desk_millis++;
    watch_the_buttons();
    print_told(ms, TOLD_LOOK);
    print_told(ms, TOLD_BRIGHTNESS);
    print_told(ms, TOLD_BLACKOUT);
    print_told(ms, TOLD_PAUSE);
    if (picture_changed) take_moment();
  }
}

static int not_understood(const char *what) {
  fprintf(stderr, "not understood: %s\n", what);
  return 2;
}

// Two days.
constexpr int64_t LONGEST_SCRIPT_MS = 48LL * 3600 * 1000;

static int play_script(int argc, char **argv) {
  int64_t start = 0;
  if (argc >= 2 && strcmp(argv[0], "--start") == 0) start = number_from(argv[1], UINT32_MAX);
  if (start < 0) {
    usage();
    return 2;
  }
  desk_millis = (uint32_t)start;
  last_millis = desk_millis;
  live.uptime_ms = desk_millis;
  start_player();
  unsigned ms = 0;
  int64_t earliest = 0;
  char line[256];
  while (fgets(line, sizeof line, stdin) != nullptr) {
    line[strcspn(line, "\r\n")] = 0;
    const char *time = strtok(line, " ");
    const char *what = strtok(nullptr, " ");
    const char *name = strtok(nullptr, "");
    if (time == nullptr) continue;
    const int64_t at = number_from(time, LONGEST_SCRIPT_MS);
    if (at < earliest || what == nullptr) return not_understood(time);
    earliest = at;
    if (strcmp(what, "end") == 0) {
      play_until(ms, (unsigned)at);
      return 0;
    }
    const bool down = strcmp(what, "down") == 0;
    const int button = name == nullptr ? 0 : index_of(name, BUTTON_NAMES, BUTTON_COUNT);
    if (!down && strcmp(what, "up") != 0) return not_understood(what);
    if (button < 0 || button >= BUTTON_COUNT) return not_understood(name == nullptr ? what : name);
    if (at > 0) play_until(ms, (unsigned)at - 1);
    desk_down[button] = down;
  }
  fputs("the script has no end\n", stderr);
  return 2;
}

// What `main` does: 0 fine, 2 not understood.
int run(int argc, char **argv) {
  if (argc >= 1 && strcmp(argv[0], "frames") == 0) return frames(argc - 1, argv + 1);
  if (argc >= 1 && strcmp(argv[0], "play") == 0) return play_script(argc - 1, argv + 1);
  usage();
  return 2;
}
