/** What a hand in motion costs: an edit of 500 pixels and eight tracks, against a full check of the piece. */
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit } from '../../engine/edit/edit.ts';
import { drag, mark, startWork } from '../../engine/edit/history.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { Piece, PieceInput } from '../../engine/piece/schema.ts';
import { sound } from '../edit/pieces.ts';

/** Ten runs of 50 pixels, half of them as loose points, six looks of eight tracks with three clips each. */
function largePiece(): Piece {
  const points = Array.from({ length: 50 }, (_, i): [number, number] => [i * 7.5, (i % 9) * 3.25]);
  const looks = Array.from({ length: 6 }, (_, look) => ({
    name: `Look ${look}`,
    lengthMilliseconds: 30_000,
    tracks: Array.from({ length: 8 }, (_, track) => ({
      clips: Array.from({ length: 3 }, (_, clip) => ({
        pattern: 'wake/1',
        zone: `run ${track}`,
        startMilliseconds: clip * 10_000,
        lengthMilliseconds: 9000,
        parameters: {
          bow: '#ffb040',
          period: { keys: [0, 3000, 6000].map((ms) => ({ atMilliseconds: ms, value: 1 + ms / 1000 })) },
          tail: 0.5,
        },
      })),
    })),
  }));
  const piece: PieceInput = {
    version: 2,
    name: 'Long night',
    board: 'host',
    lines: [
      {
        pin: 6,
        part: 'ws2812b',
        runs: Array.from({ length: 10 }, (_, i) => ({
          name: `run ${i}`,
          flat: {
            kind: 'straight' as const,
            count: 50,
            start: [0, i * 20] as [number, number],
            pitchMillimetres: 10,
          },
          ...(i % 2 === 0 ? { worn: { kind: 'points' as const, points } } : {}),
        })),
      },
    ],
    zones: [
      { name: 'every third', source: { kind: 'stepped', of: { kind: 'all' }, every: 3 } },
      {
        name: 'both',
        source: {
          kind: 'twins',
          of: [
            { kind: 'run', run: 'run 0' },
            { kind: 'run', run: 'run 1' },
          ],
        },
      },
    ],
    looks,
  };
  return sound(checkPiece(piece));
}

/** Milliseconds a call takes, the fastest of some rounds: what else runs on the computer only adds to it. */
function cost(call: (i: number) => unknown): number {
  const calls = 50;
  const rounds = Array.from({ length: 12 }, (_, round) => {
    const begun = performance.now();
    for (let i = 0; i < calls; i++) call(round * calls + i);
    return (performance.now() - begun) / calls;
  });
  return Math.min(...rounds);
}

const at = { look: 'Look 3', track: 5, clip: 1 };
const drags: readonly (readonly [what: string, edit: (i: number) => Edit])[] = [
  ['a parameter', (i) => ({ kind: 'set-parameter', at, parameter: 'tail', value: 0.1 + (i % 80) / 100 })],
  ['a key', (i) => ({ kind: 'move-key', at, parameter: 'period', key: 1, toMilliseconds: 1000 + i })],
  ['a clip', (i) => ({ kind: 'move-clip', at, to: at, startMilliseconds: 10_000 + (i % 900) })],
  [
    'an edge',
    (i) => ({ kind: 'trim-clip', at, startMilliseconds: 10_000 + i, lengthMilliseconds: 9000 - i }),
  ],
  ['a run', (i) => ({ kind: 'move-runs', side: 'flat', runs: ['run 4'], by: [i + 1, 1] })],
  [
    'a run as worn',
    (i) => ({ kind: 'turn-runs', side: 'worn', runs: ['run 4'], about: [0, 0], degrees: i + 1 }),
  ],
];

/** As shares of a full check in the same run: machines differ, the share hardly does. */
export function printEdits(): void {
  const piece = largePiece();
  const checked = cost(() => checkPiece(piece));
  const share = (milliseconds: number) => (milliseconds / checked).toFixed(3).padStart(9);
  console.log(`\nan edit, as a share of a full check (${checked.toFixed(2)} ms)   applied   dragged`);
  for (const [what, edit] of drags) {
    const applied = cost((i) => applyEdit(piece, edit(i)));
    let work = mark(startWork(piece), 'Drag');
    const dragged = cost((i) => {
      work = sound(drag(work, edit(i)));
    });
    console.log(`${what.padEnd(51)}${share(applied)} ${share(dragged)}`);
  }
}
