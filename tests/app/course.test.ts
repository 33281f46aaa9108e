/** Keys and curves without a page. Rules N7 to N9 of app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  colourAt,
  enginesCourses,
  numberAt,
  type Plot,
  pathOf,
  samplesOf,
  steadyTime,
  stepped,
  timeAt,
  valueAt,
  xOf,
  yOf,
} from '../../app/web/tag/course/curve.ts';
import { bezierOf, easingText, handlePoint, pulled, readEasing } from '../../app/web/tag/course/handles.ts';
import { newKey, placeKey } from '../../app/web/tag/course/moves.ts';
import { clipTimeAt, lookTimeAt, spanOf } from '../../app/web/tag/course/span.ts';
import { applyEdit } from '../../engine/edit/apply.ts';
import { type Course, courseOf } from '../../engine/edit/courses/course.ts';
import type { Key } from '../../engine/edit/kinds/keys.ts';
import { easingNames } from '../../engine/look/easing.ts';
import { keyedValue } from '../../engine/look/keyframes.ts';
import { compileClip } from '../../engine/pattern/clip.ts';
import type { Piece } from '../../engine/piece/schema.ts';
import { samplePiece, scoreOf } from './browser/samples.ts';

const seed = 20_264;
const parasol = samplePiece('jellyfish-parasol');
const at = { look: parasol.looks[0]!.name, track: 0, clip: 0 };
const period = {
  kind: 'number',
  name: 'period',
  label: 'One breath',
  min: 1,
  max: 20,
  default: 5,
  unit: 's',
} as const;
const tint = { kind: 'colour', name: 'tint', label: 'Tint', default: '#ff9a3c' } as const;

const easing = fc.oneof(
  fc.constantFrom(...easingNames),
  fc.tuple(
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.double({ min: -2, max: 3, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.double({ min: -2, max: 3, noNaN: true }),
  ),
);

const courseOfValues = (value: fc.Arbitrary<Key['value']>): fc.Arbitrary<Course> =>
  fc
    .uniqueArray(fc.record({ atMilliseconds: fc.nat(24_000), value, easing }), {
      minLength: 1,
      maxLength: 6,
      selector: (key) => key.atMilliseconds,
    })
    .map((keys) => keys.sort((a, b) => a.atMilliseconds - b.atMilliseconds) as Course);

const numbers = courseOfValues(fc.integer({ min: 100, max: 2000 }).map((hundredths) => hundredths / 100));
const colours = courseOfValues(
  fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`),
);

/** The parasol with a course on its first clip. */
function withCourse(parameter: string, course: Course): Piece {
  const piece = structuredClone(parasol);
  piece.looks[0]!.tracks[0]!.clips[0]!.parameters[parameter] = { keys: [...course] } as never;
  return piece;
}

/** What the engine follows when it plays that clip. */
function playedCourses(piece: Piece) {
  const [zone] = scoreOf(piece).zones;
  const clip = piece.looks[0]!.tracks[0]!.clips[0]!;
  return compileClip({ piece, clip, zone: zone!, path: '' }).value!.keyed;
}

const plot: Plot = { width: 140, height: 320, spanMs: 24_000, min: 1, max: 20 };

describe('N9 the course that is drawn', () => {
  test('goes through the values that the clip plays, bit for bit', () => {
    fc.assert(
      fc.property(numbers, (course) => {
        const [drawn] = enginesCourses(period, course);
        const [played] = playedCourses(withCourse('period', course));
        for (const { ms, value } of samplesOf(drawn!, plot))
          expect(value * 65536).toBe(keyedValue(played!, ms));
      }),
      { seed, numRuns: 40 },
    );
  });

  test('mixes colours level for level as the clip plays them', () => {
    fc.assert(
      fc.property(colours, fc.nat(24_000), (course, ms) => {
        const drawn = colourAt(enginesCourses(tint, course), ms);
        const played = playedCourses(withCourse('tint', course)).map((channel) =>
          // A colour level v enters a pattern as round(v * 16384 / 255).
          Math.round((keyedValue(channel, ms) * 255) / 16384),
        );
        expect(drawn).toBe(`#${played.map((level) => level.toString(16).padStart(2, '0')).join('')}`);
      }),
      { seed, numRuns: 40 },
    );
  });

  test('a step is upright: the values on both sides of a key are drawn', () => {
    const course: Course = [
      { atMilliseconds: 0, value: 2, easing: 'step-end' },
      { atMilliseconds: 12_345, value: 9, easing: 'linear' },
    ];
    const samples = samplesOf(enginesCourses(period, course)[0]!, plot);
    const before = samples.find(({ ms }) => ms === 12_344);
    const after = samples.find(({ ms }) => ms === 12_345);
    expect([before?.value, after?.value]).toEqual([2, 9]);
    expect(pathOf([{ ms: 6000, value: 10.5 }], plot)).toBe('M70 80');
  });

  test('a whole number stays whole on its way', () => {
    const whole = { kind: 'whole', name: 'n', label: 'N', min: 0, max: 9, default: 0 } as const;
    const course: Course = [
      { atMilliseconds: 0, value: 1, easing: 'linear' },
      { atMilliseconds: 1000, value: 4, easing: 'linear' },
    ];
    const [drawn] = enginesCourses(whole, course);
    expect([0, 333, 334, 999, 1000].map((ms) => numberAt(drawn!, ms))).toEqual([1, 1, 2, 3, 4]);
  });

  test('places and values are each other’s inverse', () => {
    expect(timeAt(plot, yOf(plot, 7500))).toBeCloseTo(7500, 6);
    expect(valueAt(plot, xOf(plot, 7.5))).toBeCloseTo(7.5, 9);
    expect([timeAt(plot, -5), timeAt(plot, 900)]).toEqual([0, 24_000]);
    expect([valueAt(plot, -5), valueAt(plot, 900)]).toEqual([1, 20]);
    expect(steadyTime(10_764, plot)).toBe(10_800);
    expect(stepped(16.1234, 0.05, plot)).toBe(16.1);
    expect(stepped(99, 0.05, plot)).toBe(20);
  });
});

describe('N8 keys', () => {
  const address = { at, parameter: 'period' };

  test('placed anywhere, a key is in the piece at the nearest free time, and is still the one in hand', () => {
    const wanted = fc.record({
      atMilliseconds: fc.integer({ min: -100, max: 30_000 }),
      value: fc.integer({ min: 1, max: 20 }),
    });
    fc.assert(
      fc.property(numbers, fc.nat(), wanted, (course, pick, to) => {
        const piece = withCourse('period', course);
        const key = pick % course.length;
        const placed = placeKey(piece, address, course, key, to);
        if (placed === undefined) return;
        const { value, diagnostics } = applyEdit(piece, placed.edit);
        expect(diagnostics).toEqual([]);
        const after = courseOf(value!.piece.looks[0]!.tracks[0]!.clips[0]!.parameters.period)!;
        const others = course.filter((_, i) => i !== key);
        expect(after.filter((_, i) => i !== placed.index)).toEqual(others);
        expect(after[placed.index]).toMatchObject({ value: to.value, easing: course[key]!.easing });
        const asked = Math.max(0, to.atMilliseconds);
        const isFree = others.every((other) => other.atMilliseconds !== asked);
        if (isFree) expect(after[placed.index]!.atMilliseconds).toBe(asked);
      }),
      { seed },
    );
  });

  test('all moments of a drag have one name, whichever way it goes', () => {
    const course: Course = [{ atMilliseconds: 500, value: 5, easing: 'linear' }];
    const piece = withCourse('period', course);
    const names = [{ value: 6 }, { atMilliseconds: 900 }, { atMilliseconds: 900, value: 6 }].map((wanted) => {
      const { edit } = placeKey(piece, address, course, 0, wanted)!;
      return edit.kind === 'together' ? edit.name : edit.kind;
    });
    expect(new Set(names)).toEqual(new Set(['Move key of period of Sleeper']));
    expect(placeKey(piece, address, course, 0, { value: 5 })).toBeUndefined();
  });

  test('a new key goes on as the way did on which it stands', () => {
    const course: Course = [
      { atMilliseconds: 0, value: 5, easing: 'ease-in' },
      { atMilliseconds: 1000, value: 6, easing: 'linear' },
    ];
    const { edit, index } = newKey(address, course, 0, 5.5);
    expect(index).toBe(1);
    expect(edit).toMatchObject({
      kind: 'add-key',
      key: { atMilliseconds: 1, value: 5.5, easing: 'ease-in' },
    });
  });

  test('handles lie where the cubic-bezier has its inner points, and are pulled to where they are', () => {
    const from: Key = { atMilliseconds: 2000, value: 4, easing: 'ease' };
    const to: Key = { atMilliseconds: 6000, value: 14, easing: 'linear' };
    // CSS Easing Functions Level 1: ease is cubic-bezier(0.25, 0.1, 0.25, 1).
    const ease = bezierOf('ease')!;
    expect(handlePoint(from, to, ease, 0)).toEqual({ ms: 3000, value: 5 });
    expect(handlePoint(from, to, ease, 1)).toEqual({ ms: 3000, value: 14 });
    expect(pulled(from, to, ease, 0, { ms: 4000, value: 2 })).toEqual([0.5, -0.2, 0.25, 1]);
    expect(pulled(from, to, ease, 1, { ms: 9000, value: 99 })).toEqual([0.25, 0.1, 1, 4]);
    expect(pulled(from, { ...to, value: 4 }, ease, 0, { ms: 4000, value: 9 })).toEqual([0.5, 0.1, 0.25, 1]);
    expect(bezierOf('step-end')).toBeUndefined();
  });

  test('easings are read as CSS writes them', () => {
    for (const name of easingNames) expect(readEasing(easingText(name))).toBe(name);
    expect(readEasing(easingText([0.1, -0.5, 0.9, 1.5]))).toEqual([0.1, -0.5, 0.9, 1.5]);
    expect(readEasing('.42, 0, 1, 1')).toEqual([0.42, 0, 1, 1]);
    for (const text of ['cubic-bezier(2, 0, 1, 1)', '0, 5, 1, 1', 'ease-in-back', '1 2 3 4', ''])
      expect(readEasing(text), text).toBeUndefined();
  });
});

describe('N7 the playhead in the clip', () => {
  const clip = {
    startMilliseconds: 2000,
    lengthMilliseconds: 3000,
    endless: false,
    loopMilliseconds: 10_000,
  };

  test('is held at the ends of a clip, and runs on over all loops of an endless one', () => {
    expect([0, 2000, 3500, 4999, 9000, 13_500].map((ms) => clipTimeAt(clip, ms))).toEqual([
      0, 0, 1500, 2999, 3000, 1500,
    ]);
    expect(clipTimeAt({ ...clip, endless: true }, 13_500)).toBe(11_500);
    expect([lookTimeAt(clip, 1500), lookTimeAt(clip, 3000)]).toEqual([3500, 4999]);
    expect(lookTimeAt({ ...clip, endless: true }, 11_500)).toBe(13_500);
  });

  test('keys behind the end of a clip are in sight, too', () => {
    const course: Course = [{ atMilliseconds: 4500, value: 1, easing: 'linear' }];
    expect(spanOf(clip, course)).toBe(4500);
    expect(spanOf(clip, [])).toBe(3000);
    expect(spanOf({ ...clip, endless: true }, [])).toBe(10_000);
  });
});
