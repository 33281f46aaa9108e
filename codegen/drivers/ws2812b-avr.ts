/** WS2812B on an AVR at 16 MHz. */
import type { Driver } from './driver.ts';

export function ws2812bOnAvr(_pins: readonly number[]): Driver {
  return {
    includes: ['avr/io.h'],
    text: `static void send_pixels(uint8_t line, const uint8_t *bytes, uint16_t byteCount) {
  (void)line;
  (void)bytes;
  (void)byteCount;
}
`,
    nanosecondsPerByte: 10000,
    latchMicroseconds: 300,
  };
}
