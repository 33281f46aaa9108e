/** Edits that are made of several, so that what hangs together stays together. */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit } from '../../engine/edit/edit.ts';
import { mirrorPoint } from '../../engine/edit/geometry/plane.ts';
import { alignRuns } from '../../engine/edit/offers/align.ts';
import { changeCount, changePitch } from '../../engine/edit/offers/count.ts';
import { freeName } from '../../engine/edit/offers/free-name.ts';
import { changeLength } from '../../engine/edit/offers/length.ts';
import { choosePattern, setPatternParameters } from '../../engine/edit/offers/pattern.ts';
import { mirroredTwins } from '../../engine/edit/offers/twins.ts';
import { titleOf } from '../../engine/edit/titles.ts';
import type { Layout } from '../../engine/layout/layout.ts';
import { prepareLayout } from '../../engine/layout/prepare.ts';
import { pixelPlaces } from '../../engine/layout/shapes.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { ParameterDescription, Piece, ZoneSource } from '../../engine/piece/schema.ts';
import { frozen, sample, sound, textOf } from './pieces.ts';

const parasol = frozen(sample('jellyfish-parasol'));
const wings = frozen(sample('moth-wings'));

/** The piece after an edit that it accepts, once it is sure that it can be taken back. */
function edited(piece: Piece, edit: Edit): Piece {
  const { piece: after, inverse } = sound(applyEdit(piece, edit));
  expect(checkPiece(after).value).toEqual(after);
  expect(textOf(sound(applyEdit(after, inverse)).piece)).toBe(textOf(piece));
  return after;
}

const layoutOf = (piece: Piece): Layout => sound(prepareLayout(piece));
const runOf = (piece: Piece, name: string) => piece.lines[0]!.runs.find((run) => run.name === name)!;
const zoneOf = (piece: Piece, name: string) => piece.zones.find((zone) => zone.name === name)!.source;

describe('O1 mirrored twins', () => {
  const axis = { through: [10, 0] as [number, number], degrees: 90 };

  it('stand opposite each other, pixel by pixel, flat and worn, and share a zone', () => {
    const piece = edited(parasol, mirroredTwins(parasol, ['tentacle 1'], axis));
    const layout = layoutOf(piece);
    const zone = layout.zones.get('tentacle 1 twins')!;
    expect([zone.count, zone.entries.length]).toEqual([15, 30]);
    for (let index = 0; index < 15; index++) {
      const [one, other] = zone.entries
        .filter((entry) => entry.index === index)
        .map(({ pixel }) => layout.pixels[pixel]!);
      for (const side of ['flat', 'worn'] as const) {
        const { x, y } = one![side];
        const opposite = mirrorPoint([x, y], axis);
        expect(other![side].x).toBeCloseTo(opposite[0], 9);
        expect(other![side].y).toBeCloseTo(opposite[1], 9);
      }
    }
  });

  it('of several runs are side against side', () => {
    const piece = edited(parasol, mirroredTwins(parasol, ['rim', 'tentacle 2'], axis));
    const zone = layoutOf(piece).zones.get('rim twins')!;
    expect([zone.count, zone.entries.length]).toEqual([75, 150]);
    expect(piece.lines[0]!.runs.map(({ name }) => name)).toEqual([
      'rim',
      'rim 2',
      'tentacle 1',
      'tentacle 2',
      'tentacle 9',
      ...[3, 4, 5, 6, 7, 8].map((n) => `tentacle ${n}`),
    ]);
  });

  it('are one step with a name', () => {
    expect(titleOf(mirroredTwins(parasol, ['rim'], axis), parasol)).toBe('Twin of run rim');
  });
});

describe('O2 count and pitch', () => {
  it('a shorter run takes its worn place, its ranges and what is said of single pixels along', () => {
    const marked = edited(parasol, {
      kind: 'set-run',
      run: 'tentacle 1',
      set: { removed: [3, 13], hidden: [12, 4] },
    });
    const piece = edited(marked, sound(changeCount(marked, 'tentacle 1', 13, 'pitch')));
    const run = runOf(piece, 'tentacle 1');
    expect([run.flat, run.worn!].map((shape) => pixelPlaces(shape).length)).toEqual([13, 13]);
    expect([run.removed, run.hidden]).toEqual([[3], [12, 4]]);
    const tips = zoneOf(piece, 'tips') as Extract<ZoneSource, { kind: 'twins' }>;
    expect(tips.of.slice(0, 2)).toEqual([
      { kind: 'range', run: 'tentacle 1', first: 11, last: 12 },
      { kind: 'range', run: 'tentacle 2', first: 11, last: 14 },
    ]);
  });

  it('takes parts of zones away that lie beyond its end', () => {
    const piece = edited(parasol, sound(changeCount(parasol, 'tentacle 1', 5, 'size')));
    expect(zoneOf(piece, 'tips')).toMatchObject({ kind: 'twins', of: { length: 7 } });
  });

  it('is refused for a grid that is not full, and for a run that is not there', () => {
    const grid = edited(parasol, {
      kind: 'add-run',
      line: 0,
      index: 0,
      run: {
        name: 'pane',
        flat: {
          kind: 'grid',
          columns: 4,
          rows: 2,
          start: [0, 0],
          pitchMillimetres: 20,
          directionDegrees: 0,
          order: 'rows',
        },
        removed: [],
        hidden: [],
      },
    });
    expect(changeCount(grid, 'pane', 10, 'pitch').diagnostics[0]!.code).toBe('count-uneven');
    expect(
      pixelPlaces(runOf(edited(grid, sound(changeCount(grid, 'pane', 12, 'pitch'))), 'pane').flat).length,
    ).toBe(12);
    expect(changeCount(grid, 'pain', 10, 'pitch').diagnostics[0]!).toMatchObject({
      code: 'run-unknown',
      advice: 'Did you mean "pane"?',
    });
  });

  it('another strip of 60 a metre makes a straight run half as long', () => {
    const piece = edited(parasol, sound(changePitch(parasol, 'tentacle 1', 1000 / 60)));
    const places = pixelPlaces(runOf(piece, 'tentacle 1').flat);
    expect(Math.hypot(places[0]!.x - places[14]!.x, places[0]!.y - places[14]!.y)).toBeCloseTo(14000 / 60, 9);
    expect(runOf(piece, 'tentacle 1').worn).toBe(runOf(parasol, 'tentacle 1').worn);
  });
});

describe('O3 lengths of looks', () => {
  it('cut the clips at the new end, and remove those that would begin behind it', () => {
    const piece = edited(parasol, sound(changeLength(parasol, 'Drift', 4010)));
    const clips = piece.looks[0]!.tracks.map((track) => track.clips.map((clip) => clip.lengthMilliseconds));
    expect(clips).toEqual([[4010], [4010], []]);
  });

  it('leave endless clips alone', () => {
    const piece = edited(parasol, sound(changeLength(parasol, 'Lantern ring', 5000)));
    expect(piece.looks[3]!.tracks[0]).toBe(parasol.looks[3]!.tracks[0]);
  });
});

describe('O4 patterns', () => {
  const at = { look: 'Drift', track: 2, clip: 0 };

  it('are exchanged with what both know: the period of a wake, not its bow', () => {
    const piece = edited(parasol, sound(choosePattern(parasol, at, 'sleeper/1')));
    expect(piece.looks[0]!.tracks[2]!.clips[0]).toMatchObject({
      pattern: 'sleeper/1',
      parameters: { period: 8 },
    });
    const narrow = edited(parasol, sound(choosePattern(parasol, at, 'dew/1')));
    expect(narrow.looks[0]!.tracks[2]!.clips[0]!.parameters).toEqual({ period: 8 });
  });

  it('of the piece get other parameters, and clips are made to fit', () => {
    const parameters: ParameterDescription[] = [
      { kind: 'colour', name: 'deep', label: 'Deep', default: '#000000' },
      { kind: 'number', name: 'period', label: 'Period', min: 1, max: 3, default: 2 },
      { kind: 'number', name: 'flesh', label: 'Flesh', min: 0, max: 1, default: 0 },
    ];
    const piece = edited(parasol, setPatternParameters(parasol, 'bell stroke', parameters));
    const played = piece.looks[1]!.tracks.map(({ clips }) => clips[0]!.parameters);
    expect(played).toEqual([
      { deep: '#030d1a', period: 3 },
      { deep: '#14082a', period: 3 },
    ]);
    // Clips of other patterns are not touched.
    expect(piece.looks[0]).toBe(parasol.looks[0]);
  });
});

describe('O5 aligned runs', () => {
  it.each([
    ['left', (x: number[]) => Math.min(...x), 0],
    ['right', (x: number[]) => Math.max(...x), 0],
    ['centre', (x: number[]) => (Math.min(...x) + Math.max(...x)) / 2, 0],
    ['bottom', (y: number[]) => Math.min(...y), 1],
    ['top', (y: number[]) => Math.max(...y), 1],
    ['middle', (y: number[]) => (Math.min(...y) + Math.max(...y)) / 2, 1],
  ] as const)('%s have that line in common', (to, line, axis) => {
    const runs = wings.lines[0]!.runs.map(({ name }) => name).slice(0, 4);
    const piece = edited(wings, alignRuns(wings, 'flat', runs, to));
    const coordinates = runs.map((name) =>
      pixelPlaces(runOf(piece, name).flat).map(({ x, y }) => (axis === 0 ? x : y)),
    );
    const all = runs.flatMap((name) =>
      pixelPlaces(runOf(wings, name).flat).map(({ x, y }) => (axis === 0 ? x : y)),
    );
    for (const values of coordinates) expect(line(values)).toBeCloseTo(line(all), 9);
  });
});

describe('O6 free names', () => {
  it('count on from the wanted one, and stay within forty characters', () => {
    expect(freeName('rim', ['all'])).toBe('rim');
    expect(freeName('rim', ['rim', 'rim 2'])).toBe('rim 3');
    expect(freeName('rim 2', ['rim', 'rim 2'])).toBe('rim 3');
    expect(freeName('rim 2', ['rim 2'])).toBe('rim 3');
    const long = 'é'.repeat(40);
    expect(freeName(long, [])).toBe('é'.repeat(36));
    expect([...freeName(long, ['é'.repeat(36)])].length).toBe(38);
  });
});
