/** Figures of pixels, wire and current: they follow from the parts, so a maker leaves them alone. */
import type { Plan } from './plan.ts';
import { alignComments, rows } from './text.ts';

export function printFigures(plan: Plan): string {
  const { score, driver, features, chip } = plan;
  const { output, current } = score;
  const frameBytes = score.pixels.length * output.channels;
  const wireMicroseconds = Math.round((frameBytes * driver.nanosecondsPerByte) / 1000);
  const [redAt, greenAt, blueAt] = output.order;
  const [red, green, blue] = current.channelTenths;
  const lines: (string | false)[] = [
    `constexpr uint16_t PIXEL_COUNT = ${score.pixels.length};`,
    'constexpr uint16_t FRAME_BYTES = 3 * PIXEL_COUNT;',
    `constexpr uint8_t RED_AT = ${redAt};  // in the three bytes that a pixel is sent`,
    `constexpr uint8_t GREEN_AT = ${greenAt};`,
    `constexpr uint8_t BLUE_AT = ${blueAt};`,
    chip !== 'host' && `constexpr uint16_t WIRE_US = ${wireMicroseconds};  // to send a frame`,
    chip !== 'host' &&
      `constexpr uint16_t LATCH_US = ${driver.latchMicroseconds};  // the wire rests between frames`,
    '',
    '// Currents in tenths of a milliamp: the chip, a dark pixel, and each colour of a pixel at its fullest.',
    `constexpr uint32_t CHIP_TENTHS = ${current.chipTenths};`,
    `constexpr uint32_t DARK_TENTHS = ${current.quiescentTenths};`,
    ...(features.equalCurrents === true
      ? [`constexpr uint32_t COLOUR_TENTHS = ${red};`]
      : [
          `constexpr uint32_t RED_TENTHS = ${red};`,
          `constexpr uint32_t GREEN_TENTHS = ${green};`,
          `constexpr uint32_t BLUE_TENTHS = ${blue};`,
        ]),
    'constexpr uint32_t BASE_TENTHS = CHIP_TENTHS + PIXEL_COUNT * DARK_TENTHS;',
    '',
    '// What light may draw beside that, in 1/2550 mA: one step of one colour is its current in tenths.',
    'constexpr uint32_t LIMIT_TENTHS = LIMIT_MILLIAMPS * 10UL;',
    'constexpr uint32_t LIGHT_ALLOWANCE = LIMIT_TENTHS > BASE_TENTHS ? (LIMIT_TENTHS - BASE_TENTHS) * 255 : 0;',
    ...(features.keepAlive === true ? keepAliveLines(features.equalCurrents === true) : []),
    '',
    'static uint8_t frame[FRAME_BYTES];  // red, green, blue of each pixel; in the end what it is sent',
    features.dissolve === true && 'static uint8_t leaving_frame[FRAME_BYTES];',
  ];
  return `${alignComments(lines.filter((line) => line !== false)).join('\n')}\n`;
}

const keepAliveLines = (equalCurrents: boolean) => [
  'constexpr uint32_t KEEP_ALIVE_TENTHS = KEEP_ALIVE_MILLIAMPS * 10UL;',
  'constexpr uint32_t KEEP_ALIVE_CURRENT = KEEP_ALIVE_TENTHS > BASE_TENTHS ? (KEEP_ALIVE_TENTHS - BASE_TENTHS) * 255 : 0;',
  `constexpr uint32_t STEP_CURRENT = PIXEL_COUNT * ${equalCurrents ? '3 * COLOUR_TENTHS' : '(RED_TENTHS + GREEN_TENTHS + BLUE_TENTHS)'};`,
  'constexpr uint8_t KEEP_ALIVE_DRIVE = KEEP_ALIVE_CURRENT > 255 * STEP_CURRENT',
  '                                         ? 255',
  '                                         : (uint8_t)((KEEP_ALIVE_CURRENT + STEP_CURRENT - 1) / STEP_CURRENT);',
];

export function printGamma(plan: Plan): string {
  const entries = Array.from(plan.score.output.gamma, String);
  return [
    '// How much light each level stands for, 0 to 65280.',
    'static const uint16_t GAMMA[256] IN_FLASH = {',
    rows(entries, 16),
    '};',
    '',
  ].join('\n');
}
