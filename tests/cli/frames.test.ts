import { describe, expect, test } from 'vitest';
import { folderWith, jsonOf, lanterns, run } from './run.ts';

const at = (times: string, ...more: string[]) => [
  'frames',
  'it.json',
  '--look',
  'Low tide',
  '--at',
  times,
  ...more,
];

describe('frames', () => {
  test('by hand: red for half a second, dark for the other, at the start brightness', async () => {
    const folder = folderWith('it.json', lanterns);
    const outcome = await run(at('0,499,500,1000,10500', '--json'), folder);
    expect(outcome.exitCode).toBe(0);
    // Drive of red: (65280 * 64 >> 8 + 128) >> 8 = 64. Rest: 10.4 mA and 0.7 mA a pixel.
    const lit = {
      levels: 'ff0000ff0000',
      drive: '004000004000',
      milliamps: expect.closeTo(11.8 + (40 * 64) / 255, 9),
    };
    const dark = { levels: '000000000000', drive: '000000000000', milliamps: expect.closeTo(11.8, 9) };
    expect(jsonOf(outcome)).toEqual({
      pixels: 2,
      channels: 3,
      constants: {
        chipMilliamps: 10.4,
        quiescentMilliamps: 0.7,
        channelMilliamps: [20, 20, 20],
        limitMilliamps: 400,
      },
      frames: [
        { ms: 0, ...lit },
        { ms: 499, ...lit },
        { ms: 500, ...dark },
        { ms: 1000, ...lit },
        { ms: 10_500, ...dark },
      ],
    });
  });

  test('the constants and the drive give the milliamps, for a sample', async () => {
    const words = [
      'frames',
      'samples/ferrymans-hat.piece.json',
      '--look',
      'Moored',
      '--at',
      '0,5000,12340',
      '--json',
    ];
    const { pixels, channels, constants, frames } = jsonOf(await run(words));
    expect(frames).toHaveLength(3);
    for (const { levels, drive, milliamps } of frames) {
      const bytes = Buffer.from(drive, 'hex');
      expect(bytes).toHaveLength(pixels * channels);
      expect(Buffer.from(levels, 'hex')).toHaveLength(pixels * 3);
      // All channels of this part draw alike, so that their order does not matter here.
      const light = bytes.reduce((sum, byte) => sum + (byte / 255) * constants.channelMilliamps[0], 0);
      expect(milliamps).toBeCloseTo(
        constants.chipMilliamps + pixels * constants.quiescentMilliamps + light,
        9,
      );
    }
  });

  test('--brightness takes the place of the start brightness', async () => {
    const folder = folderWith('it.json', lanterns);
    const [full] = jsonOf(await run(at('0', '--brightness', '255', '--json'), folder)).frames;
    const [none] = jsonOf(await run(at('0', '--brightness', '0', '--json'), folder)).frames;
    expect([full.drive, none.drive]).toEqual(['00ff0000ff00', '000000000000']);
    expect(none.levels).toBe('ff0000ff0000');
  });

  test('--board counts the current of another chip', async () => {
    const folder = folderWith('it.json', lanterns);
    const { constants, frames } = jsonOf(await run(at('500', '--board', 'host', '--json'), folder));
    expect(constants.chipMilliamps).toBe(0);
    expect(frames[0].milliamps).toBeCloseTo(1.4, 9);
  });

  test('as a table, each time has its levels over its drive', async () => {
    const folder = folderWith('it.json', lanterns);
    const { exitCode, output } = await run(at('0,20'), folder);
    expect(exitCode).toBe(0);
    expect(output.split('\n')).toEqual([
      'ms    mA  levels (red, green, blue), then drive in wire order',
      ' 0  21.8  ff0000 ff0000',
      '          004000 004000',
      '20  21.8  ff0000 ff0000',
      '          004000 004000',
      '',
    ]);
  });
});
