/** A parameter that changes over the clip's time: its keys on a thread, and its whole way if asked for. */
import { lazy, Suspense } from 'react';
import type { Keyed } from '../../../../engine/pattern/keyed.ts';
import { usePart, useStore } from '../../session/store.ts';
import { useClipInHand, useTimes } from '../clip-in-hand.ts';
import { exact, time } from '../measures.ts';
import { colourAt, enginesCourses, type Moving, numberAt } from './curve.ts';
import { Knot } from './KnotButton.tsx';
import { spanOf } from './span.ts';

/** Seen only once something moves. */
const CourseEditor = lazy(() =>
  import('./CourseEditor.tsx').then(({ CourseEditor }) => ({ default: CourseEditor })),
);

interface Props {
  readonly parameter: Moving;
  readonly value: Keyed;
}

export function KeyedRow({ parameter, value }: Props) {
  const hand = useClipInHand();
  const isOpen = usePart(hand.course, (open) => open === parameter.name);
  /** Without a knot it stands still, as it is at the playhead. */
  const untie = () => {
    const ms = hand.playheadMs();
    const courses = enginesCourses(parameter, value.keys);
    const still =
      parameter.kind === 'colour' ? colourAt(courses, ms) : Number(exact(numberAt(courses[0]!, ms)));
    hand.edit(`parameter ${parameter.name}`, (at) => ({
      kind: 'set-parameter',
      at,
      parameter: parameter.name,
      value: still,
    }));
  };
  const words = isOpen ? 'Close' : 'Open';
  return (
    <div className="keyed">
      <div className="dial-head">
        <span className="keyed-name">{parameter.label}</span>
        <button
          type="button"
          className="quiet small"
          aria-expanded={isOpen}
          aria-label={`${parameter.label}: ${words.toLowerCase()} its way through time`}
          onClick={() => hand.course.set(isOpen ? null : parameter.name)}
        >
          {words}
        </button>
        <button
          type="button"
          className="key-knot"
          aria-pressed={true}
          aria-label={`${parameter.label}: changes over time; let it stand still`}
          title="Let it stand still, as it is now"
          onClick={untie}
        >
          <Knot />
        </button>
      </div>
      {isOpen ? (
        <Suspense fallback={<div className="course-room" />}>
          <CourseEditor parameter={parameter} course={value.keys} />
        </Suspense>
      ) : (
        <KeyThread {...{ parameter, value }} />
      )}
    </div>
  );
}

/** The keys in order of time, from the start of the clip to its end. */
function KeyThread({ parameter, value }: Props) {
  const hand = useClipInHand();
  const chosen = useStore(hand.key);
  const span = spanOf(useTimes(), value.keys);
  return (
    <div className="key-thread">
      {value.keys.map((key, index) => (
        <button
          key={key.atMilliseconds}
          type="button"
          className="key-bead"
          style={{
            left: `${(key.atMilliseconds / span) * 100}%`,
            ...(typeof key.value === 'string' && { '--colour': key.value }),
          }}
          data-chosen={index === chosen}
          aria-label={`${parameter.label}, key ${index + 1} of ${value.keys.length}, at ${time.text(key.atMilliseconds)}`}
          onClick={() => {
            hand.key.set(index);
            hand.course.set(parameter.name);
          }}
        />
      ))}
    </div>
  );
}
