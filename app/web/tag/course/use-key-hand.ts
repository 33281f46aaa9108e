/** What can be done to the keys of the parameter whose course lies open. */
import { useMemo } from 'react';
import { type Course, courseOf } from '../../../../engine/edit/courses/course.ts';
import type { Edit, EditOf } from '../../../../engine/edit/edit.ts';
import type { ClipAddress } from '../../../../engine/edit/kinds/addresses.ts';
import type { Key } from '../../../../engine/edit/kinds/keys.ts';
import type { Easing } from '../../../../engine/look/easing.ts';
import { useSession } from '../../session/context.ts';
import type { Manner } from '../../session/hand.ts';
import type { Session } from '../../session/session.ts';
import { type ClipInHand, useClipInHand } from '../clip-in-hand.ts';
import { exact } from '../measures.ts';
import { colourAt, enginesCourses, type Moving, numberAt } from './curve.ts';
import { type KeyWanted, newKey, placeKey } from './moves.ts';
import { lookTimeAt, timesOf } from './span.ts';

export class KeyHand {
  constructor(
    private readonly session: Session,
    private readonly hand: ClipInHand,
    private readonly parameter: Moving,
  ) {}

  choose(key: number): void {
    this.hand.key.set(key);
  }

  /** Moves a key and chooses it; tells its rank afterwards. */
  place(key: number, wanted: KeyWanted, manner: Manner): number {
    const now = this.now();
    const placed = now && placeKey(now.piece, this.address(now.at), now.course, key, wanted);
    if (placed === undefined) return key;
    this.edit(() => placed.edit, manner);
    this.choose(placed.index);
    return placed.index;
  }

  /** @param value what is there already, if it is left out */
  addAt(ms: number, value: Key['value'] = this.valueAt(ms)): void {
    const now = this.now();
    if (now === undefined) return;
    const added = newKey(this.address(now.at), now.course, ms, value);
    this.edit(() => added.edit);
    this.hand.key.set(added.index);
  }

  /** Where the playhead is, holding what is there already. */
  addAtPlayhead(): void {
    this.addAt(this.playheadMs());
  }

  remove(key: number): void {
    this.edit((address) => ({ kind: 'remove-key', ...address, key }));
    this.hand.key.set(Math.max(0, key - 1));
  }

  set(key: number, set: EditOf<'set-key'>['set'], manner: Manner = 'step'): void {
    this.edit((address) => ({ kind: 'set-key', ...address, key, set }), manner);
  }

  ease(key: number, easing: Easing, manner: Manner): void {
    this.set(key, { easing: typeof easing === 'string' ? easing : [...easing] }, manner);
  }

  rest(): void {
    this.hand.rest();
  }

  playheadMs(): number {
    return this.hand.playheadMs();
  }

  scrubTo(clipMs: number): void {
    const now = this.now();
    const look = now?.piece.looks[this.hand.at.look];
    if (now === undefined || look === undefined) return;
    this.session.scrub(lookTimeAt(timesOf(now.clip, look), clipMs));
  }

  endScrub(): void {
    this.session.endScrub();
  }

  private valueAt(ms: number): Key['value'] {
    const courses = enginesCourses(this.parameter, this.now()?.course ?? []);
    if (this.parameter.kind === 'colour') return colourAt(courses, ms);
    return Number(exact(numberAt(courses[0]!, ms)));
  }

  private now(): ({ course: Course } & NonNullable<ReturnType<ClipInHand['now']>>) | undefined {
    const now = this.hand.now();
    const course = courseOf(now?.clip.parameters[this.parameter.name]);
    return now === undefined || course === undefined ? undefined : { ...now, course };
  }

  private address(at: ClipAddress) {
    return { at, parameter: this.parameter.name };
  }

  private edit(edit: (address: { at: ClipAddress; parameter: string }) => Edit, manner?: Manner): void {
    this.hand.edit(`parameter ${this.parameter.name}`, (at) => edit(this.address(at)), manner);
  }
}

export function useKeyHand(parameter: Moving): KeyHand {
  const session = useSession();
  const hand = useClipInHand();
  return useMemo(() => new KeyHand(session, hand, parameter), [session, hand, parameter]);
}
