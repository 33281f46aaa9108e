/** A colour's way through time, mixed as the engine mixes it. */
import { useEffect, useRef } from 'react';
import type { KeyedParameter } from '../../../../engine/look/keyframes.ts';
import { colourAt, type Plot, timeAt } from './curve.ts';

interface Props {
  readonly courses: readonly KeyedParameter[];
  readonly plot: Plot;
}

export function ColourWay({ courses, plot }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current!.getContext('2d')!;
    for (let y = 0; y < plot.height; y++) {
      context.fillStyle = colourAt(courses, timeAt(plot, y));
      context.fillRect(0, y, 1, 1);
    }
  });
  return <canvas ref={canvas} className="colour-way" width={1} height={plot.height} />;
}
