/** What one sketch contains, before any of it is text: names given, patterns printed, features known. */

import type { Zone } from '../../engine/layout/layout.ts';
import type { Score, ScoredClip } from '../../engine/look/score.ts';
import type { ChipName } from '../../engine/parts/chips.ts';
import type { Driver } from '../drivers/driver.ts';
import { type HelperName, printKernels } from '../kernels/kernels.ts';
import { Names } from '../names.ts';
import { type PrintedProgram, printProgram } from '../print/program.ts';
import { clipComment, printClipBody } from './clips.ts';
import { featuresOf } from './features.ts';
import type { Features } from './select.ts';
import { spanZone } from './spans.ts';
import { Tables } from './tables.ts';
import { quoted } from './text.ts';

export interface ClipFunction {
  readonly name: string;
  readonly comment: readonly string[];
  readonly body: string;
}

export interface Plan {
  readonly score: Score;
  readonly chip: ChipName;
  readonly driver: Driver;
  readonly features: Features;
  /** Identifiers of the looks, and of the clip functions they call. */
  readonly lookNames: readonly string[];
  readonly clipNames: readonly (readonly string[])[];
  readonly functions: readonly ClipFunction[];
  readonly tables: Tables;
  /** Helper functions of the patterns, and their text. */
  readonly helpers: readonly HelperName[];
  readonly helperText: string;
}

export interface PlanRequest {
  readonly score: Score;
  readonly chip: ChipName;
  readonly driver: Driver;
  /** The host's program is one of many in a file. */
  readonly bundled?: boolean;
}

export function planSketch({ score, chip, driver, bundled = false }: PlanRequest): Plan {
  const names = new Names();
  const tables = new Tables(names);
  const lookNames = score.looks.map((look, index) => names.take('look', look.name, index + 1));
  const clips = score.looks.flatMap((look) => look.clips);
  const printed = new Map(clips.map((clip) => [clip, printProgram(clip.program, tables)]));
  const all = [...printed.values()];
  const needs = {
    time: all.some(({ uses }) => uses.time),
    turn: all.some(({ uses }) => uses.turn),
    places: all.some(({ uses }) => uses.placeX || uses.placeY),
  };
  const features = featuresOf(score, needs, chip !== 'host' ? 'chip' : bundled ? 'bundle' : 'host');

  const { clipNames, functions } = planFunctions({ score, printed, features, tables, names });
  const helpers = [...new Set(all.flatMap((program) => program.kernels))];
  const helperText = printKernels(helpers, chip, tables);
  return { score, chip, driver, features, lookNames, clipNames, functions, tables, helpers, helperText };
}

interface FunctionWork {
  readonly score: Score;
  readonly printed: ReadonlyMap<ScoredClip, PrintedProgram>;
  readonly features: Features;
  readonly tables: Tables;
  readonly names: Names;
}

/** One function a clip, but clips that would get the same one share it. */
function planFunctions(work: FunctionWork): Pick<Plan, 'clipNames' | 'functions'> {
  const { score, printed, features, tables, names } = work;
  const zones = new Map(score.zones.map((zone) => [zone, zoneTable(zone, tables)]));
  const functions = new Map<string, ClipFunction>();
  const functionOf = (clip: ScoredClip, look: number): string => {
    const { parameters } = score.piece.looks[look]!.tracks[clip.track]!.clips[clip.clip]!;
    const zone = zones.get(clip.zone)!;
    const details = { clip, printed: printed.get(clip)!, parameters, zone, tables, features };
    const body = printClipBody(details);
    const known = functions.get(body);
    if (known !== undefined) return known.name;
    const pattern = clip.pattern.replace(/\/\d+$/, '');
    const name = names.take('clip', `${pattern} ${clip.zone.name}`, functions.size + 1);
    functions.set(body, { name, comment: clipComment(details), body });
    return name;
  };
  const clipNames = score.looks.map((look, index) => look.clips.map((clip) => functionOf(clip, index)));
  return { clipNames, functions: [...functions.values()] };
}

function zoneTable(zone: Zone, tables: Tables): string {
  const { spans } = spanZone(zone);
  return tables.takeRows({
    prefix: 'zone',
    name: zone.name,
    type: 'Span',
    entries: [
      ...spans.map(
        ({ count, pixel, pixelStep, index, indexStep }) =>
          `{${[count, pixel, pixelStep, index, indexStep].join(', ')}}`,
      ),
      '{0, 0, 0, 0, 0}',
    ],
    bytes: (spans.length + 1) * 10,
    perLine: 1,
    comment: `Zone ${quoted(zone.name)}: count, first pixel and step, first index and step; a count of 0 ends it.`,
  });
}
