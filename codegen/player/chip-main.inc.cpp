// ---- The sketch itself

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
//? buttons
  for (uint8_t number = 0; number < BUTTON_COUNT; number++) pinMode(READ_8(BUTTONS[number].pin), INPUT_PULLUP);
//.
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
