/** Keyframes through splits and trims, measured with the engine's own sampling of them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import { restOfEasing } from '../../engine/edit/courses/bezier.ts';
import { courseOf } from '../../engine/edit/courses/course.ts';
import { courseFrom, courseUntil } from '../../engine/edit/courses/cut.ts';
import type { Edit } from '../../engine/edit/edit.ts';
import type { Key } from '../../engine/edit/kinds/keys.ts';
import { levelsOfColour } from '../../engine/fixed/gradient.ts';
import { type Easing, easingNames, easingTable, namedBeziers } from '../../engine/look/easing.ts';
import { keyedValue } from '../../engine/look/keyframes.ts';
import type { Clip, ParameterDescription, Piece } from '../../engine/piece/schema.ts';
import { frozen, sample, sound, textOf } from './pieces.ts';

const runs = { seed: 20260625, numRuns: 300 };

const size: ParameterDescription = {
  kind: 'number',
  name: 'size',
  label: 'Size',
  min: -50,
  max: 50,
  default: 0,
};
const tint: ParameterDescription = { kind: 'colour', name: 'tint', label: 'Tint', default: '#000000' };

type Sampler = (ms: number) => number;

/** What a pattern would read at a time of the clip, in units of the parameter; a colour's green level. */
function sampled(course: readonly Key[]): Sampler {
  const keys = course.map(({ atMilliseconds, value, easing }) => ({
    atMilliseconds,
    value: Math.round((typeof value === 'string' ? levelsOfColour(value)[1] : value) * 65536),
    easing: easingTable(easing),
  }));
  const isColour = typeof course[0]!.value === 'string';
  const [min, max] = isColour ? [0, 255] : [-50, 50];
  const probe = { name: 'probe', keys, min: min * 65536, max: max * 65536, to: 'mediump' } as const;
  return (ms) => keyedValue(probe, ms) / 65536;
}

const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/**
 * Curves that may overshoot on both sides, but have no nearly upright stretch: there a table of 65 entries
 * is itself some hundredths away from the curve, and a curve cut anew is nearer to it.
 */
const bezier = fc.tuple(share(0.1, 0.5), share(-1, 2), share(0.5, 0.9), share(-1, 2)) as fc.Arbitrary<
  [number, number, number, number]
>;
const easing: fc.Arbitrary<Easing> = fc.oneof(fc.constantFrom(...easingNames), bezier);

const courseOfValues = (value: fc.Arbitrary<number | string>): fc.Arbitrary<Key[]> =>
  fc
    .array(fc.record({ gap: fc.integer({ min: 200, max: 4000 }), value, easing }), {
      minLength: 1,
      maxLength: 5,
    })
    .map((keys) => {
      let atMilliseconds = -200;
      return keys.map(({ gap, value: at, easing: way }) => {
        atMilliseconds += gap;
        return { atMilliseconds, value: at, easing: way } as Key;
      });
    });

const numbers = courseOfValues(fc.integer({ min: -50, max: 50 }));
const greys = courseOfValues(
  fc.integer({ min: 0, max: 255 }).map((level) => `#00${level.toString(16).padStart(2, '0')}00`),
);
const cut = fc.integer({ min: 20, max: 9000 });

/** Every tick up to well beyond the last key. */
const ticks = Array.from({ length: 500 }, (_, i) => i * 20);

/** The largest error over all ticks but those beside a jump, which a shift of one moment may move. */
function worst(course: readonly Key[], rest: readonly Key[], begun: number): number {
  const [before, after] = [sampled(course), sampled(rest)];
  const errors = ticks.map((ms) => {
    const near = [-1, 0, 1].map((step) => before(Math.max(0, begun + ms + step)));
    const value = after(ms);
    return Math.max(0, Math.min(...near) - value, value - Math.max(...near));
  });
  return Math.max(...errors);
}

describe('E10 cut courses', () => {
  it('keep the very bits up to the cut', () => {
    fc.assert(
      fc.property(numbers, cut, (course, ms) => {
        const kept = courseUntil(course, ms);
        const seen = ticks.filter((tick) => tick < ms);
        expect(seen.map(sampled(kept))).toEqual(seen.map(sampled(course)));
        expect(kept.filter(({ atMilliseconds }) => atMilliseconds >= ms).length).toBeLessThanOrEqual(1);
      }),
      runs,
    );
  });

  it('go on behind the cut as they did, but for the rounding of curves drawn anew', () => {
    fc.assert(
      fc.property(numbers, cut, (course, ms) => {
        const after = courseFrom(course, ms, size);
        expect(after[0]!.atMilliseconds === 0 || ms < course[0]!.atMilliseconds).toBe(true);
        expect(after.length).toBeLessThanOrEqual(64);
        // Of a range of 100: curves by name fit exactly; where no easing can say it, sixteen straight pieces do.
        expect(worst(course, after, ms)).toBeLessThan(isBent(course) ? 2 : 0.01);
      }),
      runs,
    );
  });

  it('go on within two levels for colours with easings by name', () => {
    const named = greys.map((course) =>
      course.map((key): Key => (typeof key.easing === 'string' ? key : { ...key, easing: 'ease-in-out' })),
    );
    fc.assert(
      fc.property(named, cut, (course, ms) => {
        expect(worst(course, courseFrom(course, ms, tint), ms)).toBeLessThanOrEqual(2);
      }),
      runs,
    );
  });

  it('begun earlier they move as a whole', () => {
    fc.assert(
      fc.property(numbers, cut, (course, ms) => {
        const later = courseFrom(course, -ms, size);
        expect(later.map(({ atMilliseconds }) => atMilliseconds - ms)).toEqual(
          course.map(({ atMilliseconds }) => atMilliseconds),
        );
        expect(courseFrom(later, ms, size).map(({ value }) => value)).toEqual(
          course.map(({ value }) => value),
        );
      }),
      runs,
    );
  });

  it('hold whole numbers and bounds', () => {
    const steps: ParameterDescription = { ...size, kind: 'whole', min: 0, max: 10 };
    const course: Key[] = [
      { atMilliseconds: 0, value: 0, easing: [0.3, 2, 0.6, 2] },
      { atMilliseconds: 1000, value: 10, easing: 'linear' },
    ];
    for (let ms = 50; ms < 1000; ms += 50) {
      for (const { value } of courseFrom(course, ms, steps)) {
        expect(Number.isInteger(value) && Number(value) >= 0 && Number(value) <= 10).toBe(true);
      }
    }
  });
});

describe('E11 the rest of an easing', () => {
  it('has the curves by name of CSS Easing Functions Level 1', () => {
    const named = Object.entries(namedBeziers) as [
      keyof typeof namedBeziers,
      [number, number, number, number],
    ][];
    for (const [name, curve] of named) expect(easingTable(curve)).toEqual(easingTable(name));
    // The others are no curves.
    expect(easingNames.filter((name) => namedBeziers[name] === undefined)).toEqual([
      'linear',
      'step-start',
      'step-end',
    ]);
  });

  it('follows the curve that it was cut from', () => {
    const rest = restOfEasing('ease-in-out', 0.5) as [number, number, number, number];
    // De Casteljau at one half of (0,0) (0.42,0) (0.58,1) (1,1): (0.5,0.5) (0.645,0.75) (0.79,1) (1,1), by hand.
    expect(rest.map((value) => Number(value.toFixed(6)))).toEqual([0.29, 0.5, 0.58, 1]);
  });

  it('of a straight way or a step is the same', () => {
    for (const name of ['linear', 'step-start', 'step-end'] as const)
      expect(restOfEasing(name, 0.3)).toBe(name);
  });

  it('has no form in CSS where a curve has just reached its end and goes on beyond, or stands upright', () => {
    expect(restOfEasing([0.2, 3, 0.6, 3], 0.9)).toBeDefined();
    // y = 9t(1-t) + t^3 is 1 at t = 0.1274, where x is 0.0856: no stretching makes a height of nothing.
    expect(restOfEasing([0.2, 3, 0.6, 3], 0.0856)).toBeUndefined();
    expect(restOfEasing([1, 0, 0, 1], 0.4)).toBeUndefined();
  });
});

describe('E12 split and trimmed clips', () => {
  const parasol = frozen(sample('jellyfish-parasol'));
  const at = { look: 'Bell stroke', track: 1, clip: 0 };
  const edited = (piece: Piece, edit: Edit) => sound(applyEdit(piece, edit)).piece;
  const clipsOf = (piece: Piece): Clip[] => piece.looks[1]!.tracks[1]!.clips;
  const flesh = (clip: Clip) => courseOf(clip.parameters.flesh)!;
  const whole = clipsOf(parasol)[0]!;

  it('have the colours of their keyframes at every moment of both halves', () => {
    for (const atMilliseconds of [20, 4321, 10_000, 10_001, 19_979, 19_980]) {
      const [first, second] = clipsOf(edited(parasol, { kind: 'split-clip', at, atMilliseconds }));
      const [before, early, late] = [whole, first!, second!].map((clip) => sampled(flesh(clip))) as Sampler[];
      for (let ms = 0; ms < 20_000; ms += 20) {
        const value = ms < atMilliseconds ? early!(ms) : late!(ms - atMilliseconds);
        expect(Math.abs(value - before!(ms))).toBeLessThanOrEqual(2);
      }
      expect(first!.startMilliseconds + first!.lengthMilliseconds).toBe(atMilliseconds);
      expect(second).toMatchObject({
        startMilliseconds: atMilliseconds,
        lengthMilliseconds: 20_000 - atMilliseconds,
      });
    }
  });

  it('fade in once and out once', () => {
    const faded = edited(parasol, {
      kind: 'set-clip',
      at,
      set: { fadeInMilliseconds: 3000, fadeOutMilliseconds: 9000 },
    });
    const fades = clipsOf(edited(faded, { kind: 'split-clip', at, atMilliseconds: 15_000 })).map(
      ({ fadeInMilliseconds, fadeOutMilliseconds }) => [fadeInMilliseconds, fadeOutMilliseconds],
    );
    expect(fades).toEqual([
      [3000, 0],
      [0, 5000],
    ]);
  });

  it('are not split too narrow, nor where they have no end', () => {
    const code = (edit: Edit, piece = parasol) => applyEdit(piece, edit).diagnostics[0]?.code;
    for (const atMilliseconds of [0, 19, 19_981, 25_000]) {
      expect(code({ kind: 'split-clip', at, atMilliseconds })).toBe('split-outside');
    }
    const endless = edited(parasol, { kind: 'set-clip', at, set: { endless: true } });
    expect(code({ kind: 'split-clip', at, atMilliseconds: 9000 }, endless)).toBe('split-endless');
  });

  it('keep keyframes where they are in the look when their start is trimmed', () => {
    const trimmed = edited(parasol, {
      kind: 'trim-clip',
      at,
      startMilliseconds: 4000,
      lengthMilliseconds: 16_000,
    });
    const times = flesh(clipsOf(trimmed)[0]!).map(({ atMilliseconds }) => atMilliseconds);
    expect(times).toEqual([0, 6000, 15_980]);
    const back = edited(trimmed, { kind: 'trim-clip', at, startMilliseconds: 0, lengthMilliseconds: 20_000 });
    expect(flesh(clipsOf(back)[0]!).map(({ atMilliseconds }) => atMilliseconds)).toEqual([
      4000, 10_000, 19_980,
    ]);
  });
});

describe('E13 keyframes', () => {
  const parasol = frozen(sample('jellyfish-parasol'));
  const address = { at: { look: 'Bell stroke', track: 1, clip: 0 }, parameter: 'flesh' };
  const still = { at: { look: 'Drift', track: 1, clip: 0 }, parameter: 'period' };
  const key = (atMilliseconds: number, value: number | string): Key =>
    ({ atMilliseconds, value, easing: 'linear' }) as Key;
  const setOn = (piece: Piece, { at, parameter }: typeof address) =>
    piece.looks.find(({ name }) => name === at.look)!.tracks[at.track]!.clips[at.clip]!.parameters[parameter];
  const edited = (edit: Edit, piece = parasol) => sound(applyEdit(piece, edit)).piece;
  const times = (piece: Piece) =>
    courseOf(setOn(piece, address))!.map(({ atMilliseconds }) => atMilliseconds);

  it('are put in by their time, move past each other, and go', () => {
    const added = edited({ kind: 'add-key', ...address, key: key(500, '#102030') });
    expect(times(added)).toEqual([0, 500, 10_000, 19_980]);
    const moved = edited({ kind: 'move-key', ...address, key: 1, toMilliseconds: 12_000 }, added);
    expect(times(moved)).toEqual([0, 10_000, 12_000, 19_980]);
    expect(courseOf(setOn(moved, address))![2]!.value).toBe('#102030');
    const removed = edited({ kind: 'remove-key', ...address, key: 2 }, moved);
    expect(textOf(removed)).toBe(textOf(parasol));
  });

  it('are refused at the time of another one', () => {
    const codes = [
      applyEdit(parasol, { kind: 'add-key', ...address, key: key(10_000, '#102030') }),
      applyEdit(parasol, { kind: 'move-key', ...address, key: 0, toMilliseconds: 10_000 }),
    ].map(({ diagnostics }) => diagnostics[0]!.code);
    expect(codes).toEqual(['key-taken', 'key-taken']);
  });

  it('make a still parameter move, and leave the last value behind', () => {
    const moving = edited({ kind: 'add-key', ...still, key: key(500, 9) });
    expect(setOn(moving, still)).toEqual({ keys: [key(500, 9)] });
    const standing = edited({ kind: 'remove-key', ...still, key: 0 }, moving);
    expect(setOn(standing, still)).toBe(9);
  });

  it('have values of their parameter, and easings', () => {
    const eased = edited({ kind: 'set-key', ...address, key: 1, set: { easing: [0, 1, 0, 1] } });
    expect(courseOf(setOn(eased, address))![1]!.easing).toEqual([0, 1, 0, 1]);
    expect(
      applyEdit(parasol, { kind: 'set-key', ...address, key: 1, set: { value: 7 } }).value,
    ).toBeUndefined();
    expect(applyEdit(parasol, { kind: 'add-key', ...still, key: key(0, 31) }).diagnostics[0]!.code).toBe(
      'parameter-range',
    );
    const gradient = { ...still, parameter: 'water', key: key(0, '#000000') };
    expect(applyEdit(parasol, { kind: 'add-key', ...gradient }).diagnostics[0]!.code).toBe('parameter-kind');
  });
});

/** Whether a curve of four numbers is in it, which may overshoot and be approximated. */
function isBent(course: readonly Key[]): boolean {
  return course.some(({ easing: way }) => typeof way !== 'string');
}
