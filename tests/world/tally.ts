/** Counts the pieces in which something was really at work in a frame: a clip that shows, a key on its way. */
import { clipAmount, clipMsAt, lookTimeAt } from '../../engine/look/clip-time.ts';
import type { Moment } from '../../engine/look/moment.ts';
import type { Score, ScoredClip } from '../../engine/look/score.ts';
import { inOrder } from '../../engine/pattern/ir.ts';
import { findLibraryPattern } from '../../engine/pattern/library.ts';
import type { ZoneSource } from '../../engine/piece/schema.ts';

export class Tally {
  private readonly seeds = new Map<string, Set<number>>();

  /** In how many pieces this was seen at work. */
  pieces(kind: string, name: string): number {
    return this.seeds.get(`${kind} ${name}`)?.size ?? 0;
  }

  count(seed: number, score: Score, moment: Moment): void {
    const saw = (kind: string, name: string) => {
      const key = `${kind} ${name}`;
      const seeds = this.seeds.get(key) ?? new Set();
      this.seeds.set(key, seeds.add(seed));
    };
    if (moment.blackout) return;
    const { curve, balance } = score.piece.output;
    saw('curve', typeof curve === 'string' ? curve : 'power');
    if (balance !== undefined) saw('feature', 'balance');
    if (moment.ms >= score.looks[moment.look]!.lengthMilliseconds) saw('feature', 'later loop');
    this.countLook(saw, score, moment.look, moment.ms);
    if (moment.leaving !== null) {
      saw('feature', 'leaving');
      this.countLook(saw, score, moment.leaving.look, moment.leaving.ms);
    }
  }

  private countLook(saw: Saw, score: Score, index: number, ms: number): void {
    const look = score.looks[index]!;
    const time = lookTimeAt(look, ms, score.piece.tickMilliseconds);
    for (const clip of look.clips) {
      const clipMs = clipMsAt(clip, time);
      if (clipMs === null || clipAmount(clip, clipMs) === 0) continue;
      saw('pattern', findLibraryPattern(clip.pattern) === undefined ? 'own' : clip.pattern);
      saw('blend', clip.blend);
      if (clip.endless) saw('feature', 'endless');
      if (clipAmount(clip, clipMs) !== clip.opacity) saw('feature', 'fading');
      countZone(saw, score, clip);
      countEasings(saw, score, index, clip, clipMs);
    }
  }
}

type Saw = (kind: string, name: string) => void;

function countZone(saw: Saw, { piece, pixels }: Score, { zone }: ScoredClip): void {
  const runs = piece.lines.flatMap((line) => line.runs);
  const named = piece.zones.find(({ name }) => name === zone.name)?.source;
  const built: ZoneSource = zone.name === 'all' ? { kind: 'all' } : { kind: 'run', run: zone.name };
  for (const kind of kindsOf(named ?? built)) saw('zone', kind);
  for (const number of new Set(zone.entries.map(({ pixel }) => pixels[pixel]!.run))) {
    const run = runs[number]!;
    saw('shape', (run.worn ?? run.flat).kind);
    if (run.worn !== undefined) saw('feature', 'worn');
    if (run.removed.length > 0) saw('feature', 'removed');
    if (run.hidden.length > 0) saw('feature', 'hidden');
  }
}

function kindsOf(source: ZoneSource): string[] {
  if (!('of' in source)) return [source.kind];
  return [source.kind, ...[source.of].flat().flatMap(kindsOf)];
}

/** Easings that are on their way between two different keys of a parameter that the light depends on. */
function countEasings(saw: Saw, score: Score, look: number, clip: ScoredClip, clipMs: number): void {
  const { parameters } = score.piece.looks[look]!.tracks[clip.track]!.clips[clip.clip]!;
  const read = new Set(
    inOrder(clip.program.levels).flatMap((node) =>
      node.op === 'keyed' ? [clip.program.keyed[node.slot]!.name.replace(/_(red|green|blue)$/, '')] : [],
    ),
  );
  for (const [name, value] of Object.entries(parameters)) {
    if (typeof value !== 'object' || Array.isArray(value) || !read.has(name)) continue;
    const at = value.keys.filter((key) => key.atMilliseconds <= clipMs).length - 1;
    const [from, to] = [value.keys[at], value.keys[at + 1]];
    if (from === undefined || to === undefined || from.value === to.value) continue;
    saw('easing', typeof from.easing === 'string' ? from.easing : 'cubic-bezier');
  }
}
