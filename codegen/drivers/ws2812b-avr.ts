/**
 * WS2812B on an ATmega328P at 16 MHz: cycle-counted, blocking, interrupts off inside a frame only.
 *
 * The pulses lie in the intersection of what the revisions of the WS2812B datasheet ask for (T0H 250-380,
 * T0L 750-1000, T1H 750-950, T1L 300-420 ns, latch 300 us). The pin is moved by OUT alone: its one cycle is
 * certain (AVR instruction set manual), where SBI and CBI take two and spoil the count.
 */
import type { Driver } from './driver.ts';
import text from './ws2812b-avr.inc.cpp';

/** The pin is the sketch's own constant `PIXEL_PIN`, so that a maker may move it; a wrong one does not compile. */
export function ws2812bOnAvr(_pins: readonly number[]): Driver {
  return {
    includes: ['avr/io.h', 'avr/interrupt.h'],
    text,
    nanosecondsPerByte: 8 * 1250,
    latchMicroseconds: 300,
  };
}
