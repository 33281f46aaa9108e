import { describe, expect, it } from 'vitest';
import { fnv1a, pieceHash } from '../../codegen/player/piece-hash.ts';
import { pieceSchema } from '../../engine/piece/schema.ts';

/** FNV-1a 64 bit: test vectors of draft-eastlake-fnv, appendix C ("", "a", "foobar"). */
const vectors: readonly [string, bigint][] = [
  ['', 0xcbf29ce484222325n],
  ['a', 0xaf63dc4c8601ec8cn],
  ['foobar', 0x85944171f73967e8n],
];

const piece = (name: string) =>
  pieceSchema.parse({
    version: 2,
    name,
    board: 'host',
    lines: [
      {
        pin: 6,
        part: 'ws2812b',
        runs: [{ name: 'hem', flat: { kind: 'straight', count: 3, start: [0, 0], pitchMillimetres: 10 } }],
      },
    ],
    looks: [{ name: 'Dusk', lengthMilliseconds: 1000, tracks: [] }],
  });

describe('the hash of a piece', () => {
  it.each(vectors)('is FNV-1a: %j', (text, expected) => {
    expect(fnv1a([...text].map((letter) => letter.charCodeAt(0)))).toBe(expected);
  });

  it('changes with the piece and not with the order of its keys', () => {
    const one = piece('Moth');
    const shuffled = Object.fromEntries(Object.entries(one).reverse()) as typeof one;
    expect(pieceHash(one)).toMatch(/^[0-9a-f]{16}$/);
    expect(pieceHash(shuffled)).toBe(pieceHash(one));
    expect(pieceHash(piece('Moths'))).not.toBe(pieceHash(one));
  });
});
