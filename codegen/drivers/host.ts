/** On the desk there is no wire: `main` prints the bytes where it wants them. */
import type { Driver } from './driver.ts';

export const hostDriver: Driver = {
  includes: [],
  text: `static void send_pixels(uint8_t line, const uint8_t *bytes, uint16_t byteCount) {
  (void)line;
  (void)bytes;
  (void)byteCount;
}
`,
  nanosecondsPerByte: 0,
  latchMicroseconds: 0,
};
