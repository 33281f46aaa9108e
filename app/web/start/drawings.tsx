/** Small drawings of what may lie on the table. */
import type { ReactNode } from 'react';
import type { LightKind } from './answers.ts';

const dot = (x: number, y: number) => <circle key={`${x} ${y}`} cx={x} cy={y} r="2.6" />;
const turns = Array.from({ length: 12 }, (_, i) => (i * Math.PI) / 6);
const steps = [0, 1, 2, 3, 4];

const dots: Record<LightKind, readonly ReactNode[]> = {
  strip: steps.map((i) => dot(8 + i * 12, 24)),
  ring: turns.map((turn) => dot(32 + 17 * Math.cos(turn), 24 + 17 * Math.sin(turn))),
  grid: steps.slice(0, 4).flatMap((row) => steps.map((i) => dot(10 + i * 11, 7.5 + row * 11))),
  pixels: [dot(8, 34), dot(20, 18), dot(31, 30), dot(43, 12), dot(56, 26)],
};

const wires: Record<LightKind, string> = {
  strip: 'M1 18 H63 V30 H1 Z',
  ring: 'M32 1.500 A22.500 22.500 0 1 1 31.900 1.500 Z M32 12.500 A11.500 11.500 0 1 0 32.100 12.500 Z',
  grid: 'M3 1 H61 V47 H3 Z',
  pixels: 'M1 38 L8 34 C14 30 14 20 20 18 S26 31 31 30 S37 14 43 12 S50 25 56 26 L63 22',
};

export function drawingOf(kind: LightKind): ReactNode {
  return (
    <svg viewBox="0 0 64 48" aria-hidden="true">
      <path d={wires[kind]} />
      {dots[kind]}
    </svg>
  );
}
