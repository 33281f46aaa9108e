/** The keys of a course, to be taken hold of. */
import { type CSSProperties, type KeyboardEvent, type RefObject, useEffect, useRef } from 'react';
import type { Course } from '../../../../engine/edit/courses/course.ts';
import type { Key } from '../../../../engine/edit/kinds/keys.ts';
import { snapTime } from '../../../../engine/edit/snap/snap-time.ts';
import { coarse } from '../Entry.tsx';
import { plainMeasure, time } from '../measures.ts';
import { type Moving, type Plot, steadyTime, stepped, xOf, yOf } from './curve.ts';
import { stepMilliseconds } from './KeyRows.tsx';
import { useKeyHand } from './use-key-hand.ts';
import { usePull } from './use-pull.ts';

interface Props {
  readonly parameter: Moving;
  readonly course: Course;
  readonly chosen: number;
  readonly plot: Plot;
  readonly field: RefObject<HTMLElement | null>;
  /** Of the value. */
  readonly step: number;
}

/** A key comes to the playhead and to the ends of the clip from as far as this, in CSS pixels. */
const reach = 6;

/** Later, and more: time runs down, and values to the right. */
const arrows: Partial<Record<string, readonly [number, number]>> = {
  ArrowDown: [1, 0],
  ArrowUp: [-1, 0],
  ArrowRight: [0, 1],
  ArrowLeft: [0, -1],
};

const turns: Partial<Record<string, number>> = { PageDown: 1, PageUp: -1 };

export function KeyPins(props: Props) {
  const pins = useRef<HTMLDivElement>(null);
  const { chosen, course } = props;
  const { length } = course;
  // A key that passes another by the keyboard takes the focus along.
  useEffect(() => {
    const root = pins.current;
    if (root?.contains(document.activeElement) && chosen < length)
      root.querySelectorAll<HTMLElement>('.key-pin')[chosen]?.focus();
  }, [chosen, length]);
  return (
    <div className="key-pins" ref={pins}>
      {course.map((key, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: dragged past another, a key is still the one in hand
        <KeyPin key={index} {...props} index={index} own={key} />
      ))}
    </div>
  );
}

function KeyPin({ parameter, course, chosen, plot, field, step, index, own }: Props & PinProps) {
  const keys = useKeyHand(parameter);
  const isColour = typeof own.value === 'string';
  const value = isColour ? 0.5 : Number(own.value);
  /** The key that was taken hold of may have passed others since. */
  const held = useRef(index);
  const pull = usePull(
    plot,
    field,
    { ms: own.atMilliseconds, value },
    {
      take() {
        held.current = index;
        keys.choose(index);
      },
      pull(to) {
        const targets = [0, plot.spanMs, keys.playheadMs()];
        const ms = snapTime(steadyTime(to.ms, plot), targets, (reach / plot.height) * plot.spanMs);
        held.current = keys.place(
          held.current,
          { atMilliseconds: ms, ...(!isColour && { value: stepped(to.value, step, plot) }) },
          'drag',
        );
      },
      rest: () => keys.rest(),
    },
  );
  const onKeyDown = (event: KeyboardEvent) => {
    const times = event.shiftKey ? coarse : 1;
    const [later, more] = arrows[event.key] ?? [0, 0];
    const next = turns[event.key];
    if (later !== 0) {
      const ms = own.atMilliseconds + later * times * stepMilliseconds;
      keys.place(index, { atMilliseconds: Math.max(0, ms) }, 'drag');
    } else if (more !== 0 && !isColour) {
      keys.place(index, { value: stepped(value + more * times * step, step, plot) }, 'drag');
    } else if (next !== undefined) keys.choose(Math.min(course.length - 1, Math.max(0, index + next)));
    else if (event.key === 'Delete' || event.key === 'Backspace') keys.remove(index);
    else return;
    event.preventDefault();
  };
  const words = isColour
    ? String(own.value)
    : plainMeasure('unit' in parameter ? parameter.unit : '').text(value);
  return (
    <div
      className="key-pin"
      role="slider"
      tabIndex={index === chosen ? 0 : -1}
      aria-orientation="vertical"
      aria-label={`${parameter.label}, key ${index + 1} of ${course.length}`}
      aria-valuemin={0}
      aria-valuemax={plot.spanMs}
      aria-valuenow={own.atMilliseconds}
      aria-valuetext={`${words} at ${time.text(own.atMilliseconds)}`}
      data-chosen={index === chosen}
      style={
        {
          left: xOf(plot, value),
          top: yOf(plot, own.atMilliseconds),
          ...(isColour && { '--colour': own.value }),
        } as CSSProperties
      }
      onKeyDown={onKeyDown}
      onDoubleClick={(event) => event.stopPropagation()}
      onFocus={() => keys.choose(index)}
      onBlur={() => keys.rest()}
      {...pull}
    />
  );
}

interface PinProps {
  readonly index: number;
  readonly own: Key;
}
