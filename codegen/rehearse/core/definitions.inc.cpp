// The sketch core of a rehearsal: time and pins. Chapters and registers are those of the ATmega328P datasheet.

// ---- Time: TIMER0 counts to 256 at one 64th of the clock, 4 us a count, 1.024 ms a round ------------

static volatile uint32_t rounds;    // of TIMER0: overflows that were served
static volatile uint32_t whole_ms;  // since power-up
static uint16_t leftover_us;        // beyond whole_ms

static const uint16_t ROUND_US = 1024;
static const uint8_t COUNT_US = 4;

// While interrupts are off the flag remembers one overflow; any further one is lost.
ISR(TIMER0_OVF_vect) {
  rounds++;
  whole_ms++;
  leftover_us = (uint16_t)(leftover_us + ROUND_US - 1000);
  if (leftover_us >= 1000) {
    leftover_us = (uint16_t)(leftover_us - 1000);
    whole_ms++;
  }
}

static void start_clock() {
  TCCR0A = 0;                      // normal mode, both compare pins left alone
  TCCR0B = _BV(CS01) | _BV(CS00);  // clock / 64
  TIMSK0 = _BV(TOIE0);             // an interrupt at each overflow
}

uint32_t millis() {
  const uint8_t status = SREG;
  cli();
  const uint32_t now = whole_ms;
  SREG = status;
  return now;
}

uint32_t micros() {
  const uint8_t status = SREG;
  cli();
  const uint8_t count = TCNT0;
  uint32_t now = rounds;
  // Overflown, but not served yet: the count has begun anew, unless it was read right before.
  if ((TIFR0 & _BV(TOV0)) && count < 255) now++;
  SREG = status;
  return ((now << 8) + count) * COUNT_US;
}

// ---- Pins: 0 to 7 are port D, 8 to 13 port B, 14 to 19 (A0 to A5) port C -----------------------------

// The three registers of a port, which stand one after the other (register summary).
struct Port {
  uint8_t input;      // PIN
  uint8_t direction;  // DDR: 1 for an output
  uint8_t output;     // PORT; for an input, 1 turns the pull-up on
};

static volatile Port &port_of(uint8_t pin) {
  return reinterpret_cast<volatile Port &>(pin < 8 ? PIND : pin < 14 ? PINB : PINC);
}

static uint8_t bit_of(uint8_t pin) {
  return (uint8_t)(1 << (pin < 8 ? pin : pin < 14 ? pin - 8 : pin - 14));
}

static const uint8_t LAST_PIN = 19;

static void write_bit(volatile uint8_t &target, uint8_t mask, bool on) {
  const uint8_t status = SREG;
  cli();
  target = on ? (uint8_t)(target | mask) : (uint8_t)(target & ~mask);
  SREG = status;
}

void pinMode(uint8_t pin, uint8_t mode) {
  if (pin > LAST_PIN) return;
  volatile Port &port = port_of(pin);
  write_bit(port.direction, bit_of(pin), mode == OUTPUT);
  if (mode != OUTPUT) write_bit(port.output, bit_of(pin), mode == INPUT_PULLUP);
}

void digitalWrite(uint8_t pin, uint8_t level) {
  if (pin <= LAST_PIN) write_bit(port_of(pin).output, bit_of(pin), level != LOW);
}

int digitalRead(uint8_t pin) {
  return pin <= LAST_PIN && (port_of(pin).input & bit_of(pin)) ? HIGH : LOW;
}

int main() {
  start_clock();
  sei();
  setup();
  for (;;) loop();
}
