/** The key in hand, to be set exactly. */
import type { Course } from '../../../../engine/edit/courses/course.ts';
import { fitKey } from '../../../../engine/edit/snap/fit-key.ts';
import { limits } from '../../../../engine/piece/limits.ts';
import { ColourField } from '../colour/ColourField.tsx';
import { Dial } from '../Dial.tsx';
import { Entry } from '../Entry.tsx';
import { plainMeasure, time } from '../measures.ts';
import { niceStep } from '../steps.ts';
import type { Moving } from './curve.ts';
import { useKeyHand } from './use-key-hand.ts';

interface Props {
  readonly parameter: Moving;
  readonly course: Course;
  readonly chosen: number;
}

/** As fine as a key is moved by an arrow. */
export const stepMilliseconds = 100;

export function KeyRows({ parameter, course, chosen }: Props) {
  const keys = useKeyHand(parameter);
  const { value, atMilliseconds } = course[chosen]!;
  const rest = () => keys.rest();
  const name = `Key ${chosen + 1}`;
  return (
    <div className="rows key-rows">
      <div className="figure-row">
        <span>
          {name} of {course.length}, at
        </span>
        <Entry
          label={`${name}, at`}
          value={atMilliseconds}
          min={0}
          max={limits.lookMilliseconds}
          step={stepMilliseconds}
          measure={time}
          check={(ms) => (fitKey(course, ms, chosen) === ms ? null : 'There is a key already.')}
          onChange={(ms) => keys.place(chosen, { atMilliseconds: ms }, 'drag')}
          onRest={rest}
        />
      </div>
      {parameter.kind === 'colour' ? (
        <ColourField
          label={`${name}, colour`}
          value={String(value)}
          onChange={(colour) => keys.set(chosen, { value: colour }, 'drag')}
          onRest={rest}
        />
      ) : (
        <Dial
          label={`${name}, value`}
          min={parameter.min}
          max={parameter.max}
          step={parameter.kind === 'whole' ? 1 : niceStep(parameter.max - parameter.min)}
          value={Number(value)}
          measure={plainMeasure(parameter.unit)}
          whole={parameter.kind === 'whole'}
          onChange={(number) => keys.set(chosen, { value: number }, 'drag')}
          onRest={rest}
        />
      )}
    </div>
  );
}
