/** From the runs of a piece to addressed pixels in millimetres, and to its zones. */
import type { Checked, Diagnostic } from '../diagnostic.ts';
import type { Piece, Run } from '../piece/schema.ts';
import type { Layout, Pixel, Zone } from './layout.ts';
import { zonePlaces } from './places.ts';
import { pixelPlaces } from './shapes.ts';
import { type Ground, type RunGround, type Selection, selectPixels } from './zones.ts';

interface Prepared {
  readonly zones: Piece['zones'];
  readonly layout: Checked<Layout>;
}

/** Edits leave alone what they do not change, so the layout holds for as long as runs and zones are the same. */
const prepared = new WeakMap<Piece['lines'], Prepared>();

/** The layout of a piece that `loadPiece` has passed; or which of its zones cannot be had. */
export function prepareLayout(piece: Piece): Checked<Layout> {
  const known = prepared.get(piece.lines);
  if (known?.zones === piece.zones) return known.layout;
  const layout = layOut(piece);
  prepared.set(piece.lines, { zones: piece.zones, layout });
  return layout;
}

function layOut(piece: Piece): Checked<Layout> {
  const pixels: Pixel[] = [];
  const runs = new Map<string, RunGround>();
  for (const [index, run] of piece.lines.flatMap((line) => line.runs).entries()) {
    runs.set(run.name, addRun(run, index, pixels));
  }
  const all = pixels.flatMap(({ hidden }, address) => (hidden ? [] : [address]));
  const ground: Ground = { all, runs };
  const zones = new Map<string, Zone>();
  const diagnostics: Diagnostic[] = [];
  const add = (name: string, selection: Selection) => {
    zones.set(name, { name, ...selection, places: zonePlaces(selection.entries, pixels) });
  };
  add('all', selected({ kind: 'all' }, ground));
  for (const run of runs.keys()) add(run, selected({ kind: 'run', run }, ground));
  for (const [i, { name, source }] of piece.zones.entries()) {
    const path = `zones[${i}]`;
    const { selection, fault } = selectPixels(source, ground, `${path}.source`);
    if (fault !== undefined) diagnostics.push(fault);
    else if (selection.count === 0) diagnostics.push(empty(name, path));
    else add(name, selection);
  }
  return diagnostics.length > 0 ? { diagnostics } : { value: { pixels, zones }, diagnostics };
}

/** Appends the run's pixels, and tells which of them zones may have. */
function addRun(run: Run, index: number, pixels: Pixel[]): RunGround {
  const flat = pixelPlaces(run.flat);
  const worn = run.worn === undefined ? flat : pixelPlaces(run.worn);
  const removed = new Set(run.removed);
  const hidden = new Set(run.hidden);
  const addresses: number[] = [];
  const positions: number[] = [];
  for (const [position, place] of flat.entries()) {
    if (removed.has(position)) continue;
    const isHidden = hidden.has(position);
    if (!isHidden) {
      addresses.push(pixels.length);
      positions.push(position);
    }
    pixels.push({ run: index, position, hidden: isHidden, flat: place, worn: worn[position]! });
  }
  return { addresses, positions };
}

/** For sources of our own making, which have no faults. */
function selected(source: { kind: 'all' } | { kind: 'run'; run: string }, ground: Ground): Selection {
  return selectPixels(source, ground, '').selection ?? { entries: [], count: 0 };
}

function empty(name: string, path: string): Diagnostic {
  return {
    code: 'zone-empty',
    severity: 'error',
    message: `The zone "${name}" has no pixels.`,
    advice: 'Choose pixels that are neither removed nor hidden, or remove the zone.',
    path,
  };
}
