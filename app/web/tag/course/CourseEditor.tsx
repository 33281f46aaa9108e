/** The way of a parameter through the time of its clip: drawn, and changed key by key. */
import { useEffect, useRef, useState } from 'react';
import type { Course } from '../../../../engine/edit/courses/course.ts';
import { useSession } from '../../session/context.ts';
import { usePart, useStore } from '../../session/store.ts';
import { useClipInHand, useClipPart } from '../clip-in-hand.ts';
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
  const session = useSession();
  const hand = useClipInHand();
  const root = useRef<HTMLDivElement>(null);
  const clip = useClipPart((one) => one);
  const look = usePart(session.bench, ({ open }) => open?.piece.looks[hand.at.look]);
  const chosen = Math.min(useStore(hand.key), course.length - 1);
  const keys = useKeyHand(parameter);
  const [large, setLarge] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever there is more of it to be seen
  useEffect(() => {
    root.current?.closest('.keyed')?.scrollIntoView({ block: 'nearest' });
  }, [large]);
  if (look === undefined) return null;
  const key = course[chosen]!;
  return (
    <div className="course" data-large={large} ref={root}>
      <div className="course-tools">
        <button
          type="button"
          className="quiet small larger"
          aria-pressed={large}
          onClick={() => setLarge(!large)}
        >
          Larger
        </button>
        <button type="button" className="quiet small" onClick={() => keys.addAtPlayhead()}>
          Add a key here
        </button>
        <button type="button" className="quiet small" onClick={() => keys.remove(chosen)}>
          Remove key {chosen + 1}
        </button>
      </div>
      <CoursePlot parameter={parameter} course={course} clip={clip} look={look} chosen={chosen} />
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
