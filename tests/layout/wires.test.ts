/** The wires to cut: L28 of app/web/SPEC.md. */
import { describe, expect, test } from 'vitest';
import { cutLength, leadsOf } from '../../engine/layout/wires.ts';
import type { Run } from '../../engine/piece/schema.ts';

describe('wires', () => {
  const strip = (name: string, x: number, removed: number[] = []): Run => ({
    name,
    flat: { kind: 'straight', count: 5, start: [x, 0], pitchMillimetres: 10, directionDegrees: 0 },
    removed,
    hidden: [],
  });

  test('L28 a wire leads from run to run and over what is cut out, ends that are cut off need none', () => {
    const leads = leadsOf([strip('left', 0, [1, 2, 4]), strip('right', 100, [0])]);
    expect(leads).toEqual([
      {
        kind: 'bridge',
        from: { run: 'left', position: 0, address: 0 },
        to: { run: 'left', position: 3, address: 1 },
        straightMillimetres: 30,
      },
      {
        kind: 'between',
        from: { run: 'left', position: 3, address: 1 },
        to: { run: 'right', position: 1, address: 2 },
        straightMillimetres: 80,
      },
    ]);
    expect(leadsOf([strip('left', 0), strip('gone', 50, [0, 1, 2, 3, 4]), strip('right', 100)])).toHaveLength(
      1,
    );
  });

  test('L28 it is cut with slack and ends, in whole steps', () => {
    const [lead] = leadsOf([strip('left', 0), strip('right', 140)]);
    expect(lead!.straightMillimetres).toBe(100);
    expect(cutLength(lead!.straightMillimetres, 0)).toBe(130);
    expect(cutLength(lead!.straightMillimetres, 0.1)).toBe(140);
    expect(cutLength(lead!.straightMillimetres, 0.12)).toBe(145);
  });
});
