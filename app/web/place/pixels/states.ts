/** What has become of each position of a run: it shines, it stays dark, or it is cut out. */
import type { Edit } from '../../../../engine/edit/edit.ts';
import { pixelCount } from '../../../../engine/layout/shapes.ts';
import type { Run } from '../../../../engine/piece/schema.ts';

export type PixelState = 'lit' | 'hidden' | 'removed';

/** In the order of the positions. */
export function statesOf(run: Run): PixelState[] {
  const removed = new Set(run.removed);
  const hidden = new Set(run.hidden);
  return Array.from({ length: pixelCount(run.flat) }, (_, position) =>
    removed.has(position) ? 'removed' : hidden.has(position) ? 'hidden' : 'lit',
  );
}

/** An edit that makes some positions of a run so. */
export function setStates(run: Run, positions: readonly number[], state: PixelState): Edit {
  const changed = new Set(positions);
  const others = (list: readonly number[]) => list.filter((position) => !changed.has(position));
  const joined = (list: readonly number[], wanted: PixelState) =>
    [...others(list), ...(state === wanted ? changed : [])].sort((a, b) => a - b);
  const set = { removed: joined(run.removed, 'removed'), hidden: joined(run.hidden, 'hidden') };
  return { kind: 'set-run', run: run.name, set };
}

/** What a tap makes of a pixel: what is asked for, or lit again where it is that already. */
export function tapped(before: PixelState, wanted: PixelState): PixelState {
  return before === wanted ? 'lit' : wanted;
}

/** Address on the run's own stretch of the line: removed ones before it do not count; of a removed one none. */
export function addressIn(states: readonly PixelState[], position: number): number | undefined {
  if (states[position] === 'removed') return undefined;
  return states.slice(0, position).filter((state) => state !== 'removed').length;
}
