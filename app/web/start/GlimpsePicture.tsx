/** A sample as it is worn, lit at one moment. */
import { useEffect, useRef } from 'react';
import { fitPlaces } from '../picture/fit.ts';
import { screenColour } from '../picture/light.ts';
import { useSession } from '../session/context.ts';
import type { Sample } from '../session/files.ts';
import type { Glimpse } from '../worker/glimpse.ts';

const width = 300;
const height = 210;

export function GlimpsePicture({ sample }: { sample: Sample }) {
  const session = useSession();
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    let gone = false;
    sample
      .load()
      .then((text) => session.loft.glimpse(sample.fileName, text))
      .then((glimpse) => {
        const context = canvas.current?.getContext('2d');
        if (!gone && glimpse !== null && context) paint(context, glimpse);
      });
    return () => {
      gone = true;
    };
  }, [session, sample]);
  return <canvas ref={canvas} width={width} height={height} />;
}

function paint(context: CanvasRenderingContext2D, { places, hidden, drive, order }: Glimpse): void {
  const { spots, pitch } = fitPlaces(places, width, height);
  const body = Math.min(2.4, Math.max(1, pitch / 5));
  const glow = Math.min(30, Math.max(12, pitch * 2.4));
  context.clearRect(0, 0, width, height);
  context.globalCompositeOperation = 'lighter';
  for (let pixel = 0; pixel < hidden.length; pixel++) {
    const [x, y] = [spots[2 * pixel]!, spots[2 * pixel + 1]!];
    const colour = `#${screenColour(drive, pixel, order).toString(16).padStart(6, '0')}`;
    const light = context.createRadialGradient(x, y, 0, x, y, glow);
    light.addColorStop(0, colour);
    light.addColorStop(0.18, `${colour}70`);
    light.addColorStop(1, `${colour}00`);
    for (const [fill, radius] of [
      [light, glow],
      ['#2a241d', body],
    ] as const) {
      context.fillStyle = fill;
      context.beginPath();
      context.arc(x, y, radius, 0, 2 * Math.PI);
      context.fill();
    }
  }
}
