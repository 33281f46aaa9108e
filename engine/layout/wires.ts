/** The wires of the data line: from run to run, and across gaps where pixels are cut out. Millimetres. */
import type { Run } from '../piece/schema.ts';
import { pixelPlaces } from './shapes.ts';

export interface Lead {
  /** Over a gap in one run, or from one run to the next. */
  readonly kind: 'bridge' | 'between';
  readonly from: LeadEnd;
  readonly to: LeadEnd;
  /** From pixel to pixel as the crow flies, on the flat table. */
  readonly straightMillimetres: number;
}

export interface LeadEnd {
  readonly run: string;
  /** In the run, before anything was removed. */
  readonly position: number;
  /** On the whole line. */
  readonly address: number;
}

/** All wires of a line, in the order in which the data runs: pixels next to each other that no strip connects. */
export function leadsOf(runs: readonly Run[]): Lead[] {
  const leads: Lead[] = [];
  let before: (LeadEnd & { readonly x: number; readonly y: number }) | undefined;
  let address = 0;
  for (const run of runs) {
    const removed = new Set(run.removed);
    for (const [position, { x, y }] of pixelPlaces(run.flat).entries()) {
      if (removed.has(position)) continue;
      const end = { run: run.name, position, address, x, y };
      const onStrip = before?.run === run.name && position === before.position + 1;
      if (before !== undefined && !onStrip) {
        leads.push({
          kind: before.run === run.name ? 'bridge' : 'between',
          from: endOf(before),
          to: endOf(end),
          straightMillimetres: Math.hypot(x - before.x, y - before.y),
        });
      }
      before = end;
      address += 1;
    }
  }
  return leads;
}

function endOf({ run, position, address }: LeadEnd): LeadEnd {
  return { run, position, address };
}

/** Both ends together: room to strip, to tin and to solder once more. Common practice, no source. */
export const endsMillimetres = 30;

/** Wires are cut to whole steps. */
export const stepMillimetres = 5;

/** Cloth bends and stretches: a tenth more than the straight way. Common practice, no source. */
export const usualSlack = 0.1;

/** @param slack share of the straight length that is added, so that cloth can move: 0.1 is a tenth */
export function cutLength(straightMillimetres: number, slack: number): number {
  const wanted = straightMillimetres * (1 + slack) + endsMillimetres;
  // A sum that rounding puts a trillionth above a step is that step.
  return Math.ceil(wanted / stepMillimetres - 1e-9) * stepMillimetres;
}
