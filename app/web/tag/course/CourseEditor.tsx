/** The way of a parameter through the time of its clip: drawn, and changed key by key. */
import { useEffect, useRef, useState } from 'react';
import type { Course } from '../../../../engine/edit/courses/course.ts';
import { useStore } from '../../session/store.ts';
import { Ask } from '../../shell/Ask.tsx';
import { useClipInHand, useTimes } from '../clip-in-hand.ts';
import { CoursePlot } from './CoursePlot.tsx';
import type { Moving } from './curve.ts';
import { EasingRow } from './EasingRow.tsx';
import { KeyRows } from './KeyRows.tsx';
import { useKeyHand } from './use-key-hand.ts';

interface Props {
  readonly parameter: Moving;
  readonly course: Course;
}

export function CourseEditor({ parameter, course }: Props) {
  const hand = useClipInHand();
  const root = useRef<HTMLDivElement>(null);
  const times = useTimes();
  const chosen = Math.min(useStore(hand.key), course.length - 1);
  const keys = useKeyHand(parameter);
  const [large, setLarge] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever there is more of it to be seen
  useEffect(() => {
    root.current?.closest('.keyed')?.scrollIntoView({ block: 'nearest' });
  }, [large]);
  const key = course[chosen]!;
  return (
    <div className="course" data-large={large} ref={root}>
      <div className="course-tools">
        <button
          type="button"
          className="quiet small larger"
          aria-pressed={large}
          aria-label="Larger"
          title="Larger"
          onClick={() => setLarge(!large)}
        >
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M9.500 2.500h4v4M13.500 2.500 9 7M6.500 13.500h-4v-4M2.500 13.500 7 9" />
          </svg>
        </button>
        <button
          type="button"
          className="quiet small"
          aria-label="Add a key here"
          title="At the time where the bright line is"
          onClick={() => keys.addAtPlayhead()}
        >
          Add a key
        </button>
        <button
          type="button"
          className="quiet small"
          aria-label={`Remove key ${chosen + 1}`}
          onClick={() => keys.remove(chosen)}
        >
          Remove
        </button>
        <Ask about="key">
          A key says which value there is at one moment. From key to key the value glides. Drag a key, or
          double-click to add one.
        </Ask>
      </div>
      <CoursePlot parameter={parameter} course={course} times={times} chosen={chosen} />
      {course.length === 1 && (
        <p className="says">One key holds its value throughout. Move the playhead and add another.</p>
      )}
      <KeyRows parameter={parameter} course={course} chosen={chosen} />
      {chosen < course.length - 1 && (
        <EasingRow easing={key.easing} onChange={(easing) => keys.ease(chosen, easing, 'step')} />
      )}
    </div>
  );
}
