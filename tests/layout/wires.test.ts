/** Wires between runs and across cut-out pixels, counted by hand. */
import { describe, expect, test } from 'vitest';
import { cutLength, leadsOf } from '../../engine/layout/wires.ts';
import { newPiece } from '../../engine/piece/new-piece.ts';
import type { Piece, Run } from '../../engine/piece/schema.ts';

const strip = (
  name: string,
  start: [number, number],
  removed: number[] = [],
  hidden: number[] = [],
): Run => ({
  name,
  flat: { kind: 'straight', count: 5, start, pitchMillimetres: 10, directionDegrees: 0 },
  removed,
  hidden,
});

function pieceWith(...runs: Run[]): Piece {
  const piece = newPiece({
    name: 'Punt',
    board: 'host',
    part: 'ws2812b',
    limitMilliamps: 400,
    firstRun: { name: 'hull', shape: runs[0]!.flat },
  });
  return { ...piece, lines: [{ ...piece.lines[0]!, runs }] };
}

const length = (straightMillimetres: number, cutMillimetres: number) => ({
  straightMillimetres,
  cutMillimetres,
});

describe('wires', () => {
  test('lead from last pixel to first, and from the chip over a way that is not known', () => {
    // The hull ends at (40, 0); from there 30 to the right and 40 up are 50: 55 with a tenth more, 85 with joints.
    expect(leadsOf(pieceWith(strip('hull', [0, 0]), strip('oar', [70, 40])))).toEqual({
      leads: [
        { line: 0, from: null, to: 'hull', length: null },
        { line: 0, from: 'hull', to: 'oar', length: length(50, 85) },
      ],
      gaps: [],
    });
  });

  test('bridge what was cut out, and reach to what is left at the ends', () => {
    const { leads, gaps } = leadsOf(pieceWith(strip('hull', [0, 0], [1, 2, 4]), strip('oar', [50, 0], [0])));
    // Position 0 to 3 is 30 mm. The hull now ends at x = 30, the oar begins at x = 60.
    expect(gaps).toEqual([{ run: 'hull', afterPosition: 0, beforePosition: 3, length: length(30, 63) }]);
    expect(leads[1]!.length).toEqual(length(30, 63));
  });

  test('pass by a run of which nothing is left; hidden pixels are wired', () => {
    const gone = strip('weir', [500, 500], [0, 1, 2, 3, 4]);
    const { leads, gaps } = leadsOf(
      pieceWith(strip('hull', [0, 0], [], [2, 4]), gone, strip('oar', [40, 20])),
    );
    expect(leads.map(({ from, to }) => [from, to])).toEqual([
      [null, 'hull'],
      ['hull', 'oar'],
    ]);
    expect(leads[1]!.length).toEqual(length(20, 52));
    expect(gaps).toEqual([]);
  });

  test('are never cut shorter than the way and both joints', () => {
    expect([0, 0.5, 10, 100].map(cutLength)).toEqual([30, 31, 41, 140]);
  });
});
