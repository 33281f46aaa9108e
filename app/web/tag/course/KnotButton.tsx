/** A knot at the end of a row: tied, the parameter changes over time. */
import type { Key } from '../../../../engine/edit/kinds/keys.ts';
import { useClipInHand } from '../clip-in-hand.ts';
import type { Moving } from './curve.ts';
import { newKey } from './moves.ts';

interface Props {
  readonly parameter: Moving;
  /** What the first key will hold: the value as it stands. */
  readonly value: Key['value'];
}

export function KnotButton({ parameter, value }: Props) {
  const hand = useClipInHand();
  const tie = () => {
    const ms = hand.playheadMs();
    const { name } = parameter;
    hand.edit(`parameter ${name}`, (at) => newKey({ at, parameter: name }, [], ms, value).edit);
    hand.course.set(name);
  };
  const words = `${parameter.label}: let it change over time`;
  return (
    <button
      type="button"
      className="key-knot"
      aria-label={words}
      title="Let it change over time"
      onClick={tie}
    >
      <Knot />
    </button>
  );
}

export function Knot() {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true">
      <path d="M8 2.200 13.800 8 8 13.800 2.200 8Z" />
    </svg>
  );
}
