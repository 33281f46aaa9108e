/** From a file or pasted text to lines that can be laid. */
import type { Place } from '../../../../engine/layout/cubic.ts';
import { type Box, boxAround } from '../surface/box.ts';
import type { Line } from './nodes.ts';
import { linesOfPath } from './path-data.ts';
import { type DrawnPath, pastedPath, pathsOf } from './svg-drawing.ts';

export interface NamedLine {
  readonly name: string;
  readonly line: Line;
}

export interface ReadDrawing {
  readonly lines: readonly NamedLine[];
  /** What could not be read, in words; empty where all could. */
  readonly fault: string;
}

const mostBytes = 10_000_000;

/** A document that is parsed so runs no script and fetches nothing. */
export async function readDrawing(file: File): Promise<ReadDrawing> {
  if (file.size > mostBytes) return { lines: [], fault: 'The file is too large for a drawing of lines.' };
  const root = new DOMParser().parseFromString(await file.text(), 'image/svg+xml').documentElement;
  if (root.localName !== 'svg' || root.querySelector('parsererror') !== null) {
    return { lines: [], fault: `${file.name} is no SVG file that can be read.` };
  }
  const read = readPaths(pathsOf(root));
  if (read.lines.length > 0 || read.fault !== '') return read;
  return { lines: [], fault: 'There is no line in this drawing. Text has to be turned into paths first.' };
}

export function readPathData(data: string): ReadDrawing {
  return data.trim() === '' ? { lines: [], fault: '' } : readPaths([pastedPath(data)]);
}

function readPaths(paths: readonly DrawnPath[]): ReadDrawing {
  const read = paths.map((path) => ({ name: path.name, ...linesOfPath(path) }));
  const faulty = read.filter(({ fault }) => fault !== '');
  return {
    lines: read.flatMap(({ name, lines }) =>
      lines
        .filter(isOnTheBench)
        .map((line, i) => ({ name: lines.length > 1 ? `${name} ${i + 1}` : name, line })),
    ),
    fault: faulty.length === 0 ? '' : `Of ${faulty[0]!.name} only the part before a fault could be read.`,
  };
}

/** As far as the file of a piece goes, in millimetres. */
const farthest = 100_000;

function isOnTheBench({ start, curves }: Line): boolean {
  const points = [
    start,
    ...curves.flatMap(({ firstControl, secondControl, end }) => [firstControl, secondControl, end]),
  ];
  return points.flat().every((value) => Math.abs(value) <= farthest);
}

/** Around nodes and control points, which hold the line between them. */
export function boxOfLine({ start, curves }: Line): Box {
  const points = [
    start,
    ...curves.flatMap(({ firstControl, secondControl, end }) => [firstControl, secondControl, end]),
  ];
  return boxAround(points.map(([x, y]) => ({ x, y })))!;
}

/** Lines that keep their places to each other, the middle of their upper edge at a spot. */
export function laidUnder(lines: readonly Line[], [x, y]: Place): Line[] {
  const boxes = lines.map(boxOfLine);
  const corners = boxes.flatMap(({ left, right, bottom, top }) => [
    { x: left, y: bottom },
    { x: right, y: top },
  ]);
  const all = boxAround(corners);
  if (all === undefined) return [];
  const by: Place = [x - (all.left + all.right) / 2, y - all.top];
  const moved = (place: Place): [number, number] => [place[0] + by[0], place[1] + by[1]];
  return lines.map(({ start, curves }) => ({
    start: moved(start),
    curves: curves.map(({ firstControl, secondControl, end }) => ({
      firstControl: moved(firstControl),
      secondControl: moved(secondControl),
      end: moved(end),
    })),
  }));
}
