/** The two handles that bend the way from the key in hand to the next. */
import type { KeyboardEvent, RefObject } from 'react';
import type { Course } from '../../../../engine/edit/courses/course.ts';
import { coarse } from '../Entry.tsx';
import { type Moving, type Plot, xOf, yOf } from './curve.ts';
import { bezierOf, easingText, type HandleIndex, handlePoint, pulled, withHandle } from './handles.ts';
import { useKeyHand } from './use-key-hand.ts';
import { usePull } from './use-pull.ts';

interface Props {
  readonly parameter: Moving;
  readonly course: Course;
  readonly chosen: number;
  readonly plot: Plot;
  readonly field: RefObject<HTMLElement | null>;
}

export function HandlePins(props: Props) {
  const { course, chosen } = props;
  if (bezierOf(course[chosen]!.easing) === undefined) return null;
  return (
    <>
      <HandlePin {...props} handle={0} />
      <HandlePin {...props} handle={1} />
    </>
  );
}

const step = 0.01;

function HandlePin({ parameter, course, chosen, plot, field, handle }: Props & { handle: HandleIndex }) {
  const keys = useKeyHand(parameter);
  const from = course[chosen]!;
  const to = course[chosen + 1]!;
  const bezier = bezierOf(from.easing)!;
  const point = handlePoint(from, to, bezier, handle);
  const pull = usePull(
    plot,
    field,
    point,
    {
      take() {},
      pull: (wanted) => keys.ease(chosen, pulled(from, to, bezier, handle, wanted), 'drag'),
      rest: () => keys.rest(),
    },
    false,
  );
  const onKeyDown = (event: KeyboardEvent) => {
    const by = step * (event.shiftKey ? coarse : 1);
    const [dx, dy] = arrows[event.key] ?? [0, 0];
    if (dx === 0 && dy === 0) return;
    event.preventDefault();
    const [x, y] = handle === 0 ? [bezier[0], bezier[1]] : [bezier[2], bezier[3]];
    const easing = withHandle(bezier, handle, x + dx * by, y + dy * by);
    keys.ease(chosen, easing, 'drag');
  };
  const anchor = handle === 0 ? from : to;
  const at = { x: xOf(plot, point.value), y: yOf(plot, point.ms) };
  const words = handle === 0 ? 'how it sets off' : 'how it arrives';
  return (
    <>
      <svg className="curve" width={plot.width} height={plot.height} aria-hidden="true">
        <path
          className="tether"
          d={`M${xOf(plot, Number(anchor.value))} ${yOf(plot, anchor.atMilliseconds)}L${at.x} ${at.y}`}
        />
      </svg>
      <div
        className="handle-pin"
        role="slider"
        tabIndex={0}
        aria-label={`${parameter.label}: ${words}`}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={1}
        aria-valuenow={handle === 0 ? bezier[0] : bezier[2]}
        aria-valuetext={easingText(bezier)}
        style={{ left: at.x, top: at.y }}
        onKeyDown={onKeyDown}
        onDoubleClick={(event) => event.stopPropagation()}
        onBlur={() => keys.rest()}
        {...pull}
      />
    </>
  );
}

/** Along time, which runs down, and along the way that the value goes. */
const arrows: Partial<Record<string, readonly [number, number]>> = {
  ArrowDown: [1, 0],
  ArrowUp: [-1, 0],
  ArrowRight: [0, 1],
  ArrowLeft: [0, -1],
};
