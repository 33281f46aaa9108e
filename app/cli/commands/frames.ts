import { type Frame, frame, stillMoment } from '../../../engine/look/frame.ts';
import type { Score } from '../../../engine/look/score.ts';
import { columns, milliamps } from '../columns.ts';
import { open } from '../files.ts';
import { chipNamed, indexNamed, needed, oneFile, readWords, wholeNumber } from '../options.ts';
import { printJson } from '../tell.ts';
import { type Command, exitCodes } from '../terminal.ts';

const largestMs = 0xffff_ffff;

export const frames: Command = {
  usage: 'FILE --look NAME --at MS,MS,... [--brightness 0-255] [--board B] [--json]',
  does: 'prints what the pixels show and are sent, at times of a look',
  options: [
    ['--look NAME', 'a look by its exact name'],
    ['--at MS,MS,...', 'milliseconds since the look was entered; beyond its length it loops'],
    ['--brightness N', '0 to 255; the start brightness of the piece if left out'],
    ['--board B', 'count the current of another chip'],
  ],
  async run(words, terminal) {
    const { options, rest } = readWords(words, {
      look: 'text',
      at: 'text',
      brightness: 'text',
      board: 'text',
    });
    const file = oneFile(rest);
    const lookName = needed(options.look, 'look', '--look "Low tide"');
    const times = needed(options.at, 'at', '--at 0,500,1000')
      .split(',')
      .map((text) => wholeNumber(text, 'at', 0, largestMs));
    const board = options.board === undefined ? undefined : chipNamed(options.board);
    const { score } = await open(file, terminal, board);
    const look = indexNamed('look', lookName, score.looks);
    const brightness =
      options.brightness === undefined
        ? score.piece.output.startBrightness
        : wholeNumber(options.brightness, 'brightness', 0, 255);
    const drawn = times.map((ms) => ({ ms, ...frame(score, stillMoment(look, ms, brightness)) }));
    if (options.json) printJson(terminal, told(score, drawn));
    else terminal.print(table(score, drawn));
    return exitCodes.fine;
  },
};

type DrawnFrame = Frame & { readonly ms: number };

function told(score: Score, drawn: readonly DrawnFrame[]): unknown {
  const { pixels, chipTenths, quiescentTenths, channelTenths, limitMilliamps } = score.current;
  return {
    pixels,
    channels: score.output.channels,
    constants: {
      chipMilliamps: chipTenths / 10,
      quiescentMilliamps: quiescentTenths / 10,
      channelMilliamps: channelTenths.map((tenths) => tenths / 10),
      limitMilliamps,
    },
    frames: drawn.map(({ ms, levels, drive, milliamps }) => ({
      ms,
      levels: hex(levels),
      drive: hex(drive),
      milliamps,
    })),
  };
}

function table(score: Score, drawn: readonly DrawnFrame[]): string {
  const { channels } = score.output;
  const head = ['ms', 'mA', 'levels (red, green, blue), then drive in wire order'];
  const rows = drawn.flatMap((one) => [
    [String(one.ms), milliamps(one.milliamps), spaced(hex(one.levels), 6)],
    ['', one.limited ? 'limited' : '', spaced(hex(one.drive), 2 * channels)],
  ]);
  return columns([head, ...rows], ['right', 'right', 'left']);
}

function hex(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('hex');
}

function spaced(text: string, every: number): string {
  return text.match(new RegExp(`.{${every}}`, 'g'))?.join(' ') ?? '';
}
