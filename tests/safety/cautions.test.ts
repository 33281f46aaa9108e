/** The usual cautions are there, short enough for a sketch, and defer to those who know. */
import { expect, test } from 'vitest';
import { cautions, cautionsFor, deference } from '../../engine/safety/cautions.ts';
import { pieceWith } from '../support/pieces.ts';

test('every piece is told of cells, shorts, heat, flashing, water and glue', () => {
  expect(cautionsFor(pieceWith()).map(({ code }) => code)).toEqual([
    'lithium-cells',
    'short-circuit',
    'heat',
    'flashing-light',
    'water',
    'hot-glue',
  ]);
});

test('strong current is told where the limit allows it', () => {
  const codes = (limitMilliamps: number) =>
    cautionsFor(pieceWith({ supply: { limitMilliamps } })).map(({ code }) => code);
  expect(codes(3000)).not.toContain('strong-current');
  expect(codes(3001)).toContain('strong-current');
});

test('flashing has the figure of WCAG 2.2, success criterion 2.3.1', () => {
  const flashing = cautions.find(({ code }) => code === 'flashing-light')!;
  expect(flashing.short).toMatch(/no more than three flashes a second/);
  expect(flashing.sources.map(({ from }) => from)).toContain('WCAG 2.2, success criterion 2.3.1');
});

test('they defer to local codes and licensed practice', () => {
  expect(deference).toMatch(/Local codes and licensed practice come first/);
});

test.each(cautions)('$code: a line for a sketch, a few sentences for people', ({ short, text, when }) => {
  // Printable ASCII within a comment line, and nothing that could end the comment.
  expect(short).toMatch(/^[\x20-\x7e]{20,105}$/);
  expect(short).not.toMatch(/\*\/|\\$/);
  expect(text.length).toBeGreaterThan(short.length);
  expect(when).not.toBe('');
});
