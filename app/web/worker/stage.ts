/** The stage: plays the open piece. It alone decides whether a file or an edit is taken. */
import { Player, type PlayerEvent } from '../../../engine/controls/player.ts';
import type { Checked } from '../../../engine/diagnostic.ts';
import { frame } from '../../../engine/look/frame.ts';
import type { Moment } from '../../../engine/look/moment.ts';
import { prepareScore } from '../../../engine/look/prepare.ts';
import type { Score } from '../../../engine/look/score.ts';
import { loadPiece } from '../../../engine/piece/load.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { checkWhole } from '../../../engine/piece/validate.ts';
import { changed } from './difference.ts';
import type {
  ContactEdge,
  MomentChange,
  ShownFrame,
  Spotlight,
  StageReply,
  StageRequest,
} from './protocol.ts';
import { spotlitPixels, spotlitScore } from './spotlight.ts';
import { viewOf } from './view.ts';

interface Performance {
  readonly score: Score;
  /** What of it is shown. */
  readonly shown: Score;
  readonly player: Player;
  readonly down: boolean[];
}

export class Stage {
  private revision = 0;
  private on: Performance | null = null;
  private shownKey = '';
  private spotlight: Spotlight | null = null;

  /** The replies to a request; none to `edit`, `play` and `put` while nothing is on stage. */
  answer(request: StageRequest): readonly StageReply[] {
    if (request.kind === 'open') return this.take(request.revision, loadPiece(request.text), null);
    if (request.kind === 'spotlight') this.spotlight = request.spotlight;
    if (this.on === null) return [];
    switch (request.kind) {
      case 'edit': {
        const piece = changed(this.on.score.piece, request.difference);
        return this.take(request.revision, checkWhole(piece), this.on);
      }
      case 'play':
        return [this.play(this.on, request.elapsedMs, request.edges)];
      case 'put':
        // What was meant for an older piece may name a look that is gone.
        return [this.put(this.on, request.revision === this.revision ? request.change : {})];
      case 'spotlight':
        return this.shine(this.on, request.spotlight);
    }
  }

  private shine(on: Performance, spotlight: Spotlight | null): readonly StageReply[] {
    const { score } = on;
    this.on = { ...on, shown: spotlitScore(score, spotlight) };
    this.shownKey = '';
    const pixels = spotlitPixels(score, spotlight);
    return [{ kind: 'spotlit', revision: this.revision, pixels }, this.tell(this.on, [], false)];
  }

  /** Puts a piece on stage, or says why not and goes on with the one that is there. */
  private take(revision: number, loaded: Checked<Piece>, before: Performance | null): readonly StageReply[] {
    const { value: piece } = loaded;
    if (piece === undefined) return [{ kind: 'refused', revision, diagnostics: loaded.diagnostics }];
    const prepared = prepareScore(piece);
    const diagnostics = [...loaded.diagnostics, ...prepared.diagnostics];
    if (prepared.value === undefined) return [{ kind: 'refused', revision, diagnostics }];
    const score = prepared.value;
    const player = new Player(score);
    if (before !== null) player.put(sameMoment(before, score));
    const shown = spotlitScore(score, this.spotlight);
    this.on = { score, shown, player, down: score.piece.controls.buttons.map(() => false) };
    this.revision = revision;
    this.shownKey = '';
    const onStage = { revision, view: viewOf(score), warnings: diagnostics };
    const reply: StageReply =
      before === null ? { kind: 'opened', piece, ...onStage } : { kind: 'taken', ...onStage };
    return [reply, this.tell(this.on, [], false)];
  }

  private play(on: Performance, elapsedMs: number, edges: readonly ContactEdge[]): StageReply {
    const { player, down } = on;
    const events: PlayerEvent[] = [];
    let next = 0;
    for (let ms = 1; ms <= elapsedMs; ms++) {
      for (; next < edges.length && edges[next]!.atMs <= ms; next++) {
        down[edges[next]!.button] = edges[next]!.down;
      }
      events.push(...player.step(down));
    }
    return this.tell(on, events);
  }

  private put(on: Performance, change: MomentChange): StageReply {
    const { player } = on;
    // Whoever puts something wants to see what it is now, shown before or not.
    this.shownKey = '';
    const moved = change.look !== undefined || change.ms !== undefined;
    const before = player.moment();
    player.put({
      ...before,
      ...(change.look !== undefined && { ms: 0 }),
      ...change,
      leaving: moved ? null : before.leaving,
    });
    return this.tell(on, []);
  }

  private tell(on: Performance, events: readonly PlayerEvent[], asked = true): StageReply {
    const moment = on.player.moment();
    const key = keyOf(moment, on.score.piece.tickMilliseconds);
    const drawn = key === this.shownKey ? null : draw(on, moment);
    this.shownKey = key;
    return { kind: 'moment', revision: this.revision, moment, events, frame: drawn, asked };
  }
}

/** The light of what is shown, with the current of all of it. */
function draw({ score, shown }: Performance, moment: Moment): ShownFrame {
  const whole = frame(score, moment);
  if (shown === score) return whole;
  const { levels, drive } = frame(shown, moment);
  return { ...whole, levels, drive };
}

/** Two moments of one key show the same frame: a look changes at its ticks only. */
function keyOf({ look, ms, brightness, blackout, leaving }: Moment, tickMilliseconds: number): string {
  const tick = Math.floor(ms / tickMilliseconds);
  const mixing = leaving === null ? '' : `${leaving.look} ${leaving.ms} ${leaving.mix}`;
  return `${look} ${tick} ${brightness} ${blackout} ${mixing}`;
}

/** After an edit the piece plays on where it was, as far as that look is still there. */
function sameMoment(before: Performance, score: Score): Moment {
  const moment = before.player.moment();
  const name = before.score.looks[moment.look]!.name;
  const look = score.looks.findIndex((other) => other.name === name);
  if (look < 0) return { ...moment, look: 0, ms: 0, leaving: null };
  return look === moment.look ? { ...moment, leaving: null } : { ...moment, look, leaving: null };
}

export function transferable(reply: StageReply): ArrayBuffer[] {
  const frame: ShownFrame | null = reply.kind === 'moment' ? reply.frame : null;
  return frame === null ? [] : [frame.levels.buffer as ArrayBuffer, frame.drive.buffer as ArrayBuffer];
}
