/** Colours as the tag turns them, against what has been published of OKLCH. Rules N5 and N6 of app/web/SPEC.md. */
import { toGamut } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addStopAt, gradientLevels, hardEdge } from '../../app/web/tag/colour/gradient.ts';
import { hexOf, isInGamut, mostChromaAt, oklchOf, trackOf } from '../../app/web/tag/colour/oklch.ts';
import { levelsOfColour } from '../../engine/fixed/gradient.ts';
import { borrowLevels, stillMoment } from '../../engine/look/frame.ts';
import { lineOf, pieceWith } from '../support/pieces.ts';
import { scoreOf } from './browser/samples.ts';

const seed = 20_263;
const hex = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`);

/**
 * From OKLCH to levels by the matrices that CSS Color Module Level 4 prints in its sample code (section 18,
 * after B. Ottosson, "A perceptual color space for image processing", 2020), written out here once more.
 */
function levelsByTheBook(lightness: number, chroma: number, hue: number): number[] {
  const [a, b] = [chroma * Math.cos((hue * Math.PI) / 180), chroma * Math.sin((hue * Math.PI) / 180)];
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const linear = [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
  return linear.map(
    (value) => 255 * (value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055),
  );
}

describe('N5 OKLCH', () => {
  test('there and back is the same colour, level for level, and agrees with the published matrices', () => {
    fc.assert(
      fc.property(hex, (colour) => {
        const asked = oklchOf(colour);
        expect(hexOf(asked)).toBe(colour);
        expect(isInGamut(asked)).toBe(true);
        const levels = levelsByTheBook(asked.lightness, asked.chroma, asked.hue);
        for (const [channel, level] of levelsOfColour(colour).entries())
          expect(Math.abs(level - levels[channel]!)).toBeLessThan(0.5);
      }),
      { seed },
    );
  });

  /** Web Platform Tests, css/css-color/oklch-001 to -008 (from memory). */
  test.each([
    [0.51975, 0.17686, 142.495, '#008000'],
    [0, 0, 0, '#000000'],
    [1, 0, 0, '#ffffff'],
    [0.5, 0.2, 0, '#b4065f'],
    [0.5, 0.2, 270, '#3b51d3'],
    [0.8, 0.15, 160, '#52db9c'],
    [0.55, 0.15, 345, '#ac4785'],
  ])('oklch(%s %s %s) is %s', (lightness, chroma, hue, expected) => {
    expect(hexOf({ lightness, chroma, hue })).toBe(expected);
  });

  test('what sRGB lacks keeps its lightness and hue, and loses chroma only', () => {
    const asked = fc.record({
      lightness: fc.double({ min: 0.1, max: 0.95, noNaN: true }),
      chroma: fc.double({ min: 0.02, max: 0.33, noNaN: true }),
      hue: fc.double({ min: 0, max: 360, noNaN: true }),
    });
    fc.assert(
      fc.property(asked, (colour) => {
        fc.pre(!isInGamut(colour));
        const got = oklchOf(hexOf(colour), colour.hue);
        // Half a level of each channel is all that rounding may move.
        expect(Math.abs(got.lightness - colour.lightness)).toBeLessThan(0.01);
        expect(got.chroma).toBeLessThan(colour.chroma + 0.004);
        expect(Math.abs(got.chroma - mostChromaAt(colour.lightness, colour.hue))).toBeLessThan(0.012);
      }),
      { seed },
    );
  });

  test('it is no more than a little less vivid than the gamut mapping of CSS Color 4', () => {
    const map = toGamut('rgb', 'oklch');
    const asked = { lightness: 0.7, chroma: 0.3, hue: 200 };
    const mapped = map({ mode: 'oklch', l: asked.lightness, c: asked.chroma, h: asked.hue });
    const own = levelsOfColour(hexOf(asked));
    const css = [mapped.r, mapped.g, mapped.b].map((channel) => 255 * channel);
    // CSS may cut off by up to one just noticeable difference (deltaE OK 0.02), which ours never does.
    for (const [channel, level] of own.entries()) expect(Math.abs(level - css[channel]!)).toBeLessThan(16);
  });

  test('a track shows what each of its places gives', () => {
    const colour = { lightness: 0.6, chroma: 0.1, hue: 40 };
    const stops = trackOf(colour, 'hue', 360).match(/#[0-9a-f]{6}/g)!;
    expect(stops).toHaveLength(25);
    expect(stops[6]).toBe(hexOf({ ...colour, hue: 90 }));
    expect(stops[0]).toBe(stops[24]);
  });
});

describe('N6 gradients', () => {
  const stops = [
    { at: 0, colour: '#000000' },
    { at: 0.5, colour: '#ff8000' },
    { at: 1, colour: '#ffffff' },
  ];

  test('between stops it is what a pattern plays, level for level', () => {
    const source = 'lowp vec3 light() { return gradient_water(along); }';
    const parameters = [{ kind: 'gradient', name: 'water', label: 'Water', default: stops }] as const;
    const clip = { pattern: 'ramp', lengthMilliseconds: 1000 };
    // With 64 pixels, pixel i stands at i / 64 exactly.
    const piece = pieceWith({
      lines: [lineOf(64)],
      patterns: [{ name: 'ramp', source, parameters: [...parameters] }],
      looks: [{ name: 'Dusk', lengthMilliseconds: 1000, tracks: [{ clips: [clip] }] }],
    });
    const played = borrowLevels(scoreOf(piece), stillMoment(0, 0, 255));
    const shown = gradientLevels(stops, 65);
    expect([...played]).toEqual([...shown.subarray(0, 64 * 3)]);
    expect([...shown.subarray(64 * 3)]).toEqual([255, 255, 255]);
  });

  test('a new stop is of the colour that is there, at the place that was pointed at', () => {
    const { stops: more, index } = addStopAt(stops, 0.25);
    expect(index).toBe(1);
    expect(more[1]).toEqual({ at: 0.25, colour: '#804000' });
  });

  test('two stops at one place are a hard edge, and a third has none to come to', () => {
    const edge = hardEdge(stops, 0)!;
    expect(edge.map(({ at }) => at)).toEqual([0, 0, 1]);
    expect(hardEdge(edge, 0)).toBeUndefined();
    expect(hardEdge(stops, 2)).toBeUndefined();
    const hard = hardEdge(stops, 1)!;
    expect([...gradientLevels(hard, 3).subarray(3, 6)]).toEqual([255, 255, 255]);
  });
});
