/** What the look draws, on the time axis of its cloth: a curve running down, and the limit beside it. */
import { forwardRef, useEffect, useImperativeHandle, useRef } from 'react';
import { useSize } from '../cloth/use-size.ts';

interface Props {
  readonly limitMilliamps: number;
}

export interface CurveHandle {
  /** The highest current within each row, for as many rows as are known. */
  show(milliamps: Float32Array, knownRows: number): void;
  /** Where a current stands, 0..1 from the left. */
  shareOf(milliamps: number): number;
}

/** Room to the right of the limit, so that its line is no edge. */
const roomShare = 1.12;

export const CurrentCurve = forwardRef<CurveHandle, Props>(function CurrentCurve({ limitMilliamps }, handle) {
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const rows = useRef<{ milliamps: Float32Array; known: number }>({
    milliamps: new Float32Array(0),
    known: 0,
  });
  const size = useSize(box);
  const top = useRef(limitMilliamps * roomShare);

  useImperativeHandle(handle, () => ({
    show(milliamps, known) {
      rows.current = { milliamps, known };
      top.current = Math.max(limitMilliamps, ...milliamps) * roomShare;
      if (canvas.current !== null) draw(canvas.current, milliamps, known, top.current, limitMilliamps);
    },
    shareOf: (milliamps) => Math.min(1, milliamps / top.current),
  }));

  useEffect(() => {
    const target = canvas.current;
    if (target === null || size.width === 0) return;
    target.width = size.width * devicePixelRatio;
    target.height = size.height * devicePixelRatio;
    const { milliamps, known } = rows.current;
    top.current = Math.max(limitMilliamps, ...milliamps) * roomShare;
    draw(target, milliamps, known, top.current, limitMilliamps);
  }, [size, limitMilliamps]);

  return (
    <div ref={box} className="current-curve">
      <canvas ref={canvas} />
    </div>
  );
});

const brass = '#d9a94f';
const rose = '#f0907c';

function draw(
  canvas: HTMLCanvasElement,
  milliamps: Float32Array,
  known: number,
  top: number,
  limit: number,
): void {
  const context = canvas.getContext('2d')!;
  const { width, height } = canvas;
  context.clearRect(0, 0, width, height);
  const rowHeight = height / Math.max(1, milliamps.length);
  const x = (value: number) => (value / top) * width;
  if (known > 0) {
    context.beginPath();
    context.moveTo(x(milliamps[0]!), 0);
    for (let row = 0; row < known; row++) context.lineTo(x(milliamps[row]!), (row + 0.5) * rowHeight);
    const end = known * rowHeight;
    context.lineTo(x(milliamps[known - 1]!), end);
    context.strokeStyle = brass;
    context.lineWidth = 1.5 * devicePixelRatio;
    context.lineJoin = 'round';
    context.stroke();
    context.lineTo(0, end);
    context.lineTo(0, 0);
    const wash = context.createLinearGradient(0, 0, width, 0);
    wash.addColorStop(0, 'rgb(217 169 79 / 0.05)');
    wash.addColorStop(1, 'rgb(217 169 79 / 0.3)');
    context.fillStyle = wash;
    context.fill();
  }
  context.beginPath();
  context.setLineDash([5 * devicePixelRatio, 5 * devicePixelRatio]);
  context.moveTo(x(limit), 0);
  context.lineTo(x(limit), height);
  context.strokeStyle = rose;
  context.lineWidth = 1.5 * devicePixelRatio;
  context.stroke();
  context.setLineDash([]);
}
