/** Random lines and zones: every shape, every kind of zone, removed and hidden pixels. */
import { prepareLayout } from '../../../engine/layout/prepare.ts';
import { pixelCount } from '../../../engine/layout/shapes.ts';
import { type PieceInput, pieceSchema, type Shape, type ZoneSource } from '../../../engine/piece/schema.ts';
import type { Chance } from './chance.ts';

type RunInput = PieceInput['lines'][number]['runs'][number];
type ShapeInput = RunInput['flat'];
type Point = [number, number];

export interface GeneratedLayout {
  readonly line: PieceInput['lines'][number];
  readonly zones: NonNullable<PieceInput['zones']>;
  /** Every name that a clip may play on. */
  readonly zoneNames: readonly string[];
}

const runNames = ['rail', 'mast', 'sail', 'keel'] as const;

export function generateLayout(chance: Chance, pin: number): GeneratedLayout {
  const runs = chance.list(chance.whole(1, 4), (index) => generateRun(chance, runNames[index]!));
  const line = { pin, part: 'ws2812b' as const, runs };
  const zones: GeneratedLayout['zones'] = [];
  for (let index = chance.whole(0, 4); index > 0; index--) {
    const zone = { name: `Zone ${zones.length + 1}`, source: generateSource(chance, runs) };
    if (hasPixels(line, zone)) zones.push(zone);
  }
  const litRuns = runs.filter(({ name }) =>
    hasPixels(line, { name: 'probe', source: { kind: 'run', run: name } }),
  );
  return {
    line,
    zones,
    zoneNames: ['all', ...litRuns.map(({ name }) => name), ...zones.map(({ name }) => name)],
  };
}

/** Steps and darkness may leave a zone without any pixel, and no clip may play there. */
function hasPixels(line: PieceInput['lines'][number], zone: GeneratedLayout['zones'][number]): boolean {
  const piece = pieceSchema.parse({
    version: 2,
    name: 'Probe',
    board: 'host',
    lines: [line],
    zones: [zone],
    looks: [{ name: 'Probe', lengthMilliseconds: 1000, tracks: [] }],
  } satisfies PieceInput);
  return prepareLayout(piece).value !== undefined;
}

function generateRun(chance: Chance, name: string): RunInput {
  const flat = generateShape(chance, generateCount(chance));
  const count = countOf(flat);
  const positions = chance.list(count, (position) => position);
  const spoiled = chance.flip(0.4) ? chance.some(positions, chance.whole(0, Math.floor(count / 3))) : [];
  const removed = spoiled.filter(() => chance.flip());
  const worn = chance.flip(0.3) ? generateShapeOf(chance, count) : undefined;
  return {
    name,
    flat,
    ...(worn === undefined ? {} : { worn }),
    removed,
    hidden: spoiled.filter((position) => !removed.includes(position)),
  };
}

/** Mostly what somebody wears; single pixels and long nets now and then. */
function generateCount(chance: Chance): number {
  if (chance.flip(0.05)) return chance.whole(1, 2);
  return chance.flip(0.06) ? chance.whole(100, 300) : chance.whole(3, 36);
}

function countOf(shape: ShapeInput): number {
  return pixelCount(shape as Shape);
}

const kinds = ['straight', 'ring', 'arc', 'grid', 'path', 'points'] as const;

function generateShape(chance: Chance, count: number): ShapeInput {
  const kind = chance.pick(kinds);
  if (kind !== 'grid') return shapes[kind](chance, count);
  const columns = chance.whole(1, Math.min(count, 12));
  return grid(chance, columns, Math.max(1, Math.floor(count / columns)));
}

/** A shape with exactly so many pixels, for the same run as it is worn. */
function generateShapeOf(chance: Chance, count: number): ShapeInput {
  const kind = chance.pick(kinds);
  return kind === 'grid' ? grid(chance, count, 1) : shapes[kind](chance, count);
}

const point = (chance: Chance): Point => [chance.number(-400, 400, 1), chance.number(-400, 400, 1)];
const degrees = (chance: Chance) =>
  chance.flip(0.3) ? chance.pick([0, 90, 180, 270, -90, 360]) : chance.number(-360, 720, 1);

const shapes: Record<
  Exclude<(typeof kinds)[number], 'grid'>,
  (chance: Chance, count: number) => ShapeInput
> = {
  straight: (chance, count) => ({
    kind: 'straight',
    count,
    start: point(chance),
    pitchMillimetres: chance.number(5, 60, 1),
    directionDegrees: degrees(chance),
  }),
  ring: (chance, count) => ({
    kind: 'ring',
    count,
    centre: point(chance),
    diameterMillimetres: chance.number(20, 600, 1),
    firstDegrees: degrees(chance),
    clockwise: chance.flip(),
    flattening: chance.flip() ? 1 : chance.number(0, 1, 2),
  }),
  arc: (chance, count) => ({
    kind: 'arc',
    count,
    centre: point(chance),
    radiusMillimetres: chance.number(20, 400, 1),
    firstDegrees: degrees(chance),
    lastDegrees: degrees(chance),
  }),
  path: (chance, count) => ({
    kind: 'path',
    count,
    start: point(chance),
    curves: chance.list(chance.whole(1, 4), () => curve(chance)),
    pitchMillimetres: chance.number(5, 60, 1),
  }),
  points: (chance, count) => ({ kind: 'points', points: chance.list(count, () => point(chance)) }),
};

/** Now and then with control points drawn in. */
function curve(chance: Chance) {
  const end = point(chance);
  const secondControl = chance.flip(0.2) ? end : point(chance);
  return { firstControl: chance.flip(0.2) ? secondControl : point(chance), secondControl, end };
}

function grid(chance: Chance, columns: number, rows: number): ShapeInput {
  return {
    kind: 'grid',
    columns,
    rows,
    start: point(chance),
    pitchMillimetres: chance.number(5, 40, 1),
    ...(chance.flip() ? { rowPitchMillimetres: chance.number(5, 40, 1) } : {}),
    directionDegrees: degrees(chance),
    order: chance.pick(['rows', 'alternating'] as const),
  };
}

/** A zone takes each pixel at most once, so its parts are cut from disjoint stretches of the runs. */
function generateSource(chance: Chance, runs: readonly RunInput[]): ZoneSource {
  if (chance.flip(0.15)) return changed(chance, { kind: 'all' });
  const parts = chance
    .some(runs, chance.whole(1, runs.length))
    .flatMap((run) => stretches(chance, run).map((part) => changed(chance, part)));
  if (parts.length === 1) return parts[0]!;
  const joined: ZoneSource = { kind: chance.pick(['union', 'twins'] as const), of: parts };
  return changed(chance, joined);
}

function stretches(chance: Chance, run: RunInput): ZoneSource[] {
  const last = countOf(run.flat) - 1;
  if (last < 1 || chance.flip(0.4)) return [{ kind: 'run', run: run.name }];
  const cut = chance.whole(0, last - 1);
  const halves: [first: number, last: number][] = [
    [0, cut],
    [cut + 1, last],
  ];
  return chance
    .some(halves, chance.whole(1, 2))
    .map(([from, to]) => (chance.flip() ? { first: from, last: to } : { first: to, last: from }))
    .map((ends) => ({ kind: 'range', run: run.name, ...ends }));
}

function changed(chance: Chance, of: ZoneSource): ZoneSource {
  if (chance.flip(0.2)) return { kind: 'reversed', of };
  if (chance.flip(0.25))
    return { kind: 'stepped', of, every: chance.whole(1, 4), offset: chance.whole(0, 2) };
  return of;
}
