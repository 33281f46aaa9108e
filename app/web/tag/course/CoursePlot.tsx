/**
 * The course on its time axis, which runs down as on the loom: beside it the clip's own cloth, so that one
 * sees what a key does; across it the playhead.
 */
import { type MouseEvent, useMemo, useRef } from 'react';
import type { Course } from '../../../../engine/edit/courses/course.ts';
import { useSize } from '../../cloth/use-size.ts';
import { timeMarks } from '../../compose/ruler.ts';
import { exact } from '../measures.ts';
import { niceStep } from '../steps.ts';
import { ColourWay } from './ColourWay.tsx';
import { CourseCloth } from './CourseCloth.tsx';
import {
  enginesCourses,
  type Moving,
  type Plot,
  pathOf,
  samplesOf,
  steadyTime,
  stepped,
  timeAt,
  valueAt,
} from './curve.ts';
import { HandlePins } from './HandlePins.tsx';
import { KeyPins } from './KeyPins.tsx';
import { Needle } from './Needle.tsx';
import { shownLength, spanOf, type Times } from './span.ts';
import { useKeyHand } from './use-key-hand.ts';

interface Props {
  readonly parameter: Moving;
  readonly course: Course;
  readonly times: Times;
  readonly chosen: number;
}

const markHeight = 40;

export function CoursePlot({ parameter, course, times, chosen }: Props) {
  const keys = useKeyHand(parameter);
  const bed = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(field);
  const spanMs = spanOf(times, course);
  const isColour = parameter.kind === 'colour';
  const { min, max } = isColour ? { min: 0, max: 1 } : parameter;
  const step = parameter.kind === 'number' ? niceStep(max - min) : 1;
  const plot: Plot = { width, height, spanMs, min, max };
  const courses = useMemo(() => enginesCourses(parameter, course), [parameter, course]);
  const onDoubleClick = (event: MouseEvent) => {
    const box = field.current!.getBoundingClientRect();
    const ms = steadyTime(timeAt(plot, event.clientY - box.top), plot);
    keys.addAt(ms, isColour ? undefined : stepped(valueAt(plot, event.clientX - box.left), step, plot));
  };
  return (
    <div className="course-plot">
      {!isColour && (
        <p className="course-values" aria-hidden="true">
          <span>{exact(min)}</span>
          <span>{exact(max)}</span>
        </p>
      )}
      <div className="course-bed" ref={bed}>
        <div className="course-times" aria-hidden="true">
          {timeMarks(spanMs, Math.max(2, height / markHeight)).map(({ ms, text }) => (
            <span key={ms} style={{ top: `${(ms / spanMs) * 100}%` }} data-end={ms === spanMs}>
              {text}
            </span>
          ))}
        </div>
        <CourseCloth times={times} spanMs={spanMs} height={height} />
        {/* biome-ignore lint/a11y/noStaticElementInteractions: a shorter way to what a button does, too */}
        <div className="course-field" ref={field} data-kind={parameter.kind} onDoubleClick={onDoubleClick}>
          <div className="beyond" style={{ top: `${(shownLength(times) / spanMs) * 100}%` }} />
          {height > 0 && (
            <>
              {isColour ? (
                <ColourWay courses={courses} plot={plot} />
              ) : (
                <svg className="curve" width={width} height={height} aria-hidden="true">
                  <path d={pathOf(samplesOf(courses[0]!, plot), plot)} />
                </svg>
              )}
              {!isColour && chosen < course.length - 1 && (
                <HandlePins parameter={parameter} course={course} chosen={chosen} plot={plot} field={field} />
              )}
              <KeyPins
                parameter={parameter}
                course={course}
                chosen={chosen}
                plot={plot}
                field={field}
                step={step}
              />
            </>
          )}
        </div>
        <Needle parameter={parameter} times={times} spanMs={spanMs} bed={bed} />
      </div>
    </div>
  );
}
