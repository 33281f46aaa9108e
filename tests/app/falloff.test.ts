/** The light around a pixel of the picture. */
import { describe, expect, test } from 'vitest';
import { falloffImage, falloffs, type LayerName } from '../../app/web/picture/falloff.ts';

const names = Object.keys(falloffs) as LayerName[];

describe.each(names)('the falloff of a %s', (name) => {
  test('is whole in the middle, gone at the edge, and never grows on the way', () => {
    const light = Array.from({ length: 101 }, (_, i) => falloffs[name](i / 100));
    expect(light[0]).toBe(1);
    expect(light[100]).toBeCloseTo(0, 6);
    for (let i = 1; i < light.length; i++) expect(light[i]).toBeLessThanOrEqual(light[i - 1]!);
  });

  test('is drawn round, with dark edges that can be stretched without a frame', () => {
    const across = 32;
    const image = falloffImage(falloffs[name], across);
    for (let i = 0; i < across; i++) {
      for (const at of [i, i * across, (across - 1) * across + i, i * across + across - 1]) {
        expect(image[at]).toBe(0);
      }
      for (let j = 0; j < across; j++) expect(image[i * across + j]).toBe(image[j * across + i]);
    }
    expect(image[15 * across + 15]).toBeGreaterThan(250 * falloffs[name](0.05));
  });
});
