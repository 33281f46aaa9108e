import { expect, test } from 'vitest';
import type { Zone } from '../../engine/layout/layout.ts';
import type { Moment } from '../../engine/look/moment.ts';
import { Painter } from '../../engine/look/painter.ts';
import type { Score, ScoredClip, ScoredLook } from '../../engine/look/score.ts';
import type { DrawProgram } from '../../engine/pattern/javascript.ts';
import type { ClipProgram } from '../../engine/pattern/program.ts';
import { lineOf, pieceWith } from '../support/pieces.ts';

/** Patterns by hand, in place of compiled ones: this is about time and blending alone. */
const draws = new Map<ClipProgram, DrawProgram>();

function programOf(draw: DrawProgram): ClipProgram {
  const program = { levels: [] as never, gradients: [], keyed: [], names: new Map() };
  draws.set(program, draw);
  return program;
}

function flat(red: number, green: number, blue: number): ClipProgram {
  return programOf((out, indices) => {
    for (let entry = 0; entry < indices.length; entry++) out.set([red, green, blue], entry * 3);
  });
}

function zoneOf(name: string, entries: [pixel: number, index: number][]): Zone {
  return {
    name,
    count: Math.max(...entries.map(([, index]) => index)) + 1,
    entries: entries.map(([pixel, index]) => ({ pixel, index })),
    places: new Int16Array(entries.length * 2),
  };
}

const all = zoneOf('all', [
  [0, 0],
  [1, 1],
  [2, 2],
]);

function clipOf(changes: Partial<ScoredClip>): ScoredClip {
  return {
    track: 0,
    clip: 0,
    pattern: 'by hand',
    zone: all,
    startMilliseconds: 0,
    lengthMilliseconds: 1000,
    endless: false,
    opacity: 255,
    blend: 'normal',
    fadeInMilliseconds: 0,
    fadeOutMilliseconds: 0,
    program: flat(200, 100, 50),
    ...changes,
  };
}

function painterOf(...looks: (Partial<ScoredLook> & { clips: ScoredClip[] })[]): Painter {
  const scored = looks.map((look, index) => ({
    name: `Look ${index}`,
    lengthMilliseconds: 1000,
    dissolveMilliseconds: 0,
    ...look,
  }));
  const score = {
    piece: pieceWith({ lines: [lineOf(3)] }),
    pixels: [{}, {}, {}],
    zones: [...new Set(scored.flatMap((look) => look.clips.map((clip) => clip.zone)))],
    looks: scored,
  } as unknown as Score;
  return new Painter(score, (program) => draws.get(program)!);
}

function momentAt(ms: number, changes: Partial<Moment> = {}): Moment {
  return {
    look: 0,
    ms,
    brightness: 64,
    blackout: false,
    paused: false,
    uptimeMs: ms,
    leaving: null,
    ...changes,
  };
}

test('T10 the backdrop begins at 0, and clips lie one over the other', () => {
  const painter = painterOf({
    clips: [clipOf({}), clipOf({ program: flat(0, 255, 0), opacity: 128, zone: zoneOf('second', [[1, 0]]) })],
  });
  // unit_mix(200, 0, 128) = (200 * 128) >> 8 = 100; (100 * 128 + 255 * 129) >> 8 = 178; (50 * 128) >> 8 = 25.
  expect([...painter.paint(momentAt(0))]).toEqual([200, 100, 50, 100, 178, 25, 200, 100, 50]);
});

test('T10 each blend mode is used as named', () => {
  const under = clipOf({});
  const over = (blend: ScoredClip['blend']) =>
    [
      ...painterOf({ clips: [under, clipOf({ program: flat(100, 200, 50), blend })] }).paint(momentAt(0)),
    ].slice(0, 3);
  expect(over('normal')).toEqual([100, 200, 50]);
  // (200 * 100 + 200) >> 8, (100 * 200 + 100) >> 8, (50 * 50 + 50) >> 8.
  expect(over('multiply')).toEqual([78, 78, 9]);
  // 255 - ((55 * 155 + 55) >> 8), 255 - ((155 * 55 + 155) >> 8), 255 - ((205 * 205 + 205) >> 8).
  expect(over('screen')).toEqual([222, 222, 91]);
  expect(over('darken')).toEqual([100, 100, 50]);
  expect(over('lighten')).toEqual([200, 200, 50]);
  expect(over('plus-lighter')).toEqual([255, 255, 100]);
});

test('T3 what no clip covers is dark, and nothing of an earlier frame stays', () => {
  const painter = painterOf({ clips: [clipOf({ startMilliseconds: 500, lengthMilliseconds: 100 })] });
  expect(painter.paint(momentAt(500))[0]).toBe(200);
  expect([...painter.paint(momentAt(600))]).toEqual(Array(9).fill(0));
});

test('T3 T4 T5 a pattern sees its own time and turn, floored to the tick', () => {
  const seen: number[][] = [];
  const spy = programOf((_out, _indices, _places, time, turn) => seen.push([time, turn]));
  const painter = painterOf({
    clips: [clipOf({ startMilliseconds: 200, lengthMilliseconds: 400, program: spy })],
  });
  for (const ms of [199, 200, 399, 1419, 600]) painter.paint(momentAt(ms));
  // Clip times 0, 180, and 200 in the second loop.
  expect(seen).toEqual([
    [0, 0],
    [11796, 7372],
    [13107, 8192],
  ]);
});

test('T7 keyed parameters are evaluated at the time of the clip', () => {
  const program: ClipProgram = {
    ...programOf(() => {}),
    keyed: [
      {
        name: 'tail',
        keys: [
          { atMilliseconds: 0, value: 0, easing: Int32Array.from({ length: 65 }, (_, i) => i * 1024) },
          { atMilliseconds: 100, value: 65536, easing: new Int32Array(65) },
        ],
        min: 0,
        max: 65536,
        to: 'lowp',
      },
    ],
  };
  const seen: number[] = [];
  draws.set(program, (_out, _indices, _places, _time, _turn, keyed) => seen.push(keyed[0]!));
  const painter = painterOf({ clips: [clipOf({ startMilliseconds: 40, program })] });
  for (const ms of [40, 90, 400]) painter.paint(momentAt(ms));
  // At 90 the tick is 80, so 40 ms into the clip: 40 % of 16384.
  expect(seen).toEqual([0, 6553, 16384]);
});

test('T9 a clip that is faded to nothing is not even drawn', () => {
  let drawn = 0;
  const painter = painterOf({
    clips: [clipOf({ fadeInMilliseconds: 100, program: programOf(() => drawn++) })],
  });
  painter.paint(momentAt(0));
  expect(drawn).toBe(0);
  painter.paint(momentAt(20));
  expect(drawn).toBe(1);
});

test('T11 a leaving look is drawn at its own time and mixed below the current one', () => {
  const painter = painterOf(
    { clips: [clipOf({ program: flat(200, 0, 0) })] },
    { clips: [clipOf({ program: flat(0, 0, 100), lengthMilliseconds: 500 })] },
  );
  const dissolving = (mix: number, ms = 0) => momentAt(100, { leaving: { look: 1, ms, mix } });
  // (0 * 156 + 200 * 101) >> 8 = 78; (100 * 156) >> 8 = 60.
  expect([...painter.paint(dissolving(100))].slice(0, 3)).toEqual([78, 0, 60]);
  expect([...painter.paint(dissolving(0))].slice(0, 3)).toEqual([0, 0, 100]);
  expect([...painter.paint(dissolving(255))].slice(0, 3)).toEqual([200, 0, 0]);
  expect([...painter.paint(dissolving(0, 519))].slice(0, 3)).toEqual([0, 0, 0]);
});

test('T12 in blackout everything is dark, a leaving look as well', () => {
  const painter = painterOf({ clips: [clipOf({})] });
  painter.paint(momentAt(0));
  const dark = painter.paint(momentAt(0, { blackout: true, leaving: { look: 0, ms: 0, mix: 9 } }));
  expect([...dark]).toEqual(Array(9).fill(0));
});

test('T1 an entry draws its pixel wherever the zone has it, and only once compiled', () => {
  let compiled = 0;
  const program = programOf((out, indices) => {
    for (let entry = 0; entry < indices.length; entry++)
      out.fill(indices[entry]! + 1, entry * 3, entry * 3 + 3);
  });
  const reversed = zoneOf('reversed', [
    [2, 0],
    [0, 1],
  ]);
  const score = {
    piece: pieceWith({ lines: [lineOf(3)] }),
    pixels: [{}, {}, {}],
    zones: [reversed],
    looks: [
      {
        name: 'Dusk',
        lengthMilliseconds: 1000,
        dissolveMilliseconds: 0,
        clips: [clipOf({ zone: reversed, program })],
      },
    ],
  } as unknown as Score;
  const painter = new Painter(score, (wanted) => {
    compiled += 1;
    return draws.get(wanted)!;
  });
  expect(compiled).toBe(0);
  for (const ms of [0, 20, 40]) expect([...painter.paint(momentAt(ms))]).toEqual([2, 2, 2, 0, 0, 0, 1, 1, 1]);
  expect(compiled).toBe(1);
});
