/** What the hand on the table holds. None of it is part of the piece. */
import { createContext, useContext } from 'react';
import type { Side } from '../../../engine/edit/kinds/runs.ts';
import type { Point } from '../../../engine/layout/layout.ts';
import { Store } from '../session/store.ts';
import type { LaidKind } from './lay/kinds.ts';
import type { Guides } from './move/snapping.ts';
import type { Box } from './surface/box.ts';

/**
 * What the pointer does on the table. `pick`, the state of rest, takes runs in hand and moves them. Every
 * other tool covers the table with a layer of its own (`tools/tools.ts`) and puts itself away when it is done.
 */
export type Tool =
  | { readonly kind: 'pick' }
  | { readonly kind: 'lay'; readonly shape: LaidKind }
  /** Pixels one by one. */
  | { readonly kind: 'dot' }
  /** Into a zone, or to make one. */
  | { readonly kind: 'lasso'; readonly into: string | null }
  | { readonly kind: 'mend'; readonly run: string; readonly to: 'hidden' | 'removed' }
  /** A curve, spot by spot. */
  | { readonly kind: 'draw' }
  /** The nodes of a path; one of them may be chosen. */
  | { readonly kind: 'bend'; readonly run: string; readonly node: number | null }
  | { readonly kind: 'measure' }
  | { readonly kind: 'shift' };
export type ToolKind = Tool['kind'];
export type ToolOf<Kind extends ToolKind> = Extract<Tool, { readonly kind: Kind }>;

const rest: Tool = { kind: 'pick' };

export interface Readout {
  readonly side: Side;
  /** In millimetres. */
  readonly at: Point;
  readonly words: string;
}

export class Hand {
  readonly tool = new Store<Tool>(rest);
  /** Whether what is moved comes to rest at lines of others and of the grid. */
  readonly snaps = new Store(true);
  /** Lines on which what is being moved has come to rest. */
  readonly guides = new Store<Guides>({ side: 'flat', lines: [] });
  /** The box being drawn around runs, in millimetres. */
  readonly marquee = new Store<{ readonly side: Side; readonly box: Box } | null>(null);

  /** What a pull comes to, in words beside the pointer. */
  readonly readout = new Store<Readout | null>(null);
  /** Runs that are in use, and of which the maker has not said yet whether they may go. */
  readonly asksToRemove = new Store<readonly string[]>([]);

  /** The zone that is being worked on. */
  readonly zone = new Store<string | null>(null);

  take(tool: Tool): void {
    this.tool.set(tool);
  }

  putAway(): void {
    this.tool.set(rest);
  }
}

export const HandContext = createContext<Hand | null>(null);

export function useHand(): Hand {
  const hand = useContext(HandContext);
  if (hand === null) throw new Error('A component stands outside of the Place bench.');
  return hand;
}
