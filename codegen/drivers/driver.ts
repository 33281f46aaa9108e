/** The one door through which pixel data leaves a sketch: a piece of C++ per chip family and pixel part. */
import type { ChipName } from '../../engine/parts/chips.ts';
import type { PixelPartName } from '../../engine/parts/pixels.ts';
import { hostDriver } from './host.ts';
import { ws2812bOnAvr } from './ws2812b-avr.ts';

export interface Driver {
  /** Headers without brackets, `avr/io.h`; the sketch names each once, at its top. */
  readonly includes: readonly string[];
  /**
   * C++ that defines `static void send_pixels(uint8_t line, const uint8_t *bytes, uint16_t byteCount)`.
   * It may use the sketch's constant `PIXEL_PIN` (pin number of line 0, known when compiling) and whatever
   * `includes` brings. The sketch has made the pin a low output before and keeps the latch pause.
   */
  readonly text: string;
  /** How long one byte takes on the wire. */
  readonly nanosecondsPerByte: number;
  /** How long the wire must rest between two frames. */
  readonly latchMicroseconds: number;
}

type DriverMaker = (pins: readonly number[]) => Driver;

const drivers: Partial<Record<ChipName, Record<PixelPartName, DriverMaker>>> = {
  atmega328p: { ws2812b: ws2812bOnAvr },
  host: { ws2812b: () => hostDriver },
};

/** The driver for a chip and a part, or none where that chip is not built yet. `pins`: one a line. */
export function driverFor(chip: ChipName, part: PixelPartName, pins: readonly number[]): Driver | undefined {
  return drivers[chip]?.[part](pins);
}
