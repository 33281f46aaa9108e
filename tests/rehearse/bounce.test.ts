import { describe, expect, it } from 'vitest';
import { contactChanges } from '../../codegen/rehearse/bounce.ts';

const press = { atMilliseconds: 100, lengthMilliseconds: 40 };

describe('a bouncing contact', () => {
  it('closes, chatters for at most 6.2 ms, rests, opens and chatters again (Ganssle)', () => {
    let longest = 0;
    for (let seed = 0; seed < 500; seed++) {
      const changes = contactChanges([press], seed);
      const opens = changes.findIndex(({ atMilliseconds }) => atMilliseconds === 140);
      const closing = changes.slice(0, opens);
      const opening = changes.slice(opens);
      expect(closing[0]).toEqual({ atMilliseconds: 100, button: 0, closed: true });
      expect(opening[0]!.closed).toBe(false);
      expect(closing.at(-1)!.closed).toBe(true);
      expect(opening.at(-1)!.closed).toBe(false);
      expect(changes.every(({ closed }, i) => closed === (i % 2 === 0))).toBe(true);
      longest = Math.max(longest, closing.at(-1)!.atMilliseconds - 100, opening.at(-1)!.atMilliseconds - 140);
      expect(longest).toBeLessThanOrEqual(6.2);
    }
    expect(longest).toBeGreaterThan(5);
  });

  it('chatters the same way for the same seed, and another way for another', () => {
    expect(contactChanges([press], 5)).toEqual(contactChanges([press], 5));
    expect(contactChanges([press], 5)).not.toEqual(contactChanges([press], 6));
  });

  it('keeps several buttons in order of time', () => {
    const changes = contactChanges([press, { ...press, atMilliseconds: 102, button: 1 }], 3);
    const times = changes.map(({ atMilliseconds }) => atMilliseconds);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(new Set(changes.map(({ button }) => button))).toEqual(new Set([0, 1]));
  });
});
