/**
 * A piece made ready to play: every name resolved, every pattern compiled and specialised, every
 * table built. The preview executes it and the code generator prints it; neither looks at the file again.
 */
import type { Diagnostic } from '../diagnostic.ts';
import type { Pixel, Zone } from '../layout/layout.ts';
import type { OutputStage } from '../light/output.ts';
import type { ClipProgram } from '../pattern/program.ts';
import type { Piece } from '../piece/schema.ts';
import type { CurrentModel } from '../power/current.ts';
import type { BlendName } from './blend.ts';

export interface Score {
  readonly piece: Piece;
  /** In wire order; removed ones are left out, hidden ones stay and are dark. */
  readonly pixels: readonly Pixel[];
  /** The zones that clips play on, each once. */
  readonly zones: readonly Zone[];
  readonly looks: readonly ScoredLook[];
  readonly output: OutputStage;
  readonly current: CurrentModel;
  /** Warnings of the piece and of its patterns; a score with errors does not exist. */
  readonly warnings: readonly Diagnostic[];
}

export interface ScoredLook {
  readonly name: string;
  readonly lengthMilliseconds: number;
  readonly dissolveMilliseconds: number;
  /** Bottom first, over all tracks: the order in which clips blend. */
  readonly clips: readonly ScoredClip[];
}

export interface ScoredClip {
  /** Position in the piece: `looks[look].tracks[track].clips[clip]`. */
  readonly track: number;
  readonly clip: number;
  readonly pattern: string;
  readonly zone: Zone;
  readonly startMilliseconds: number;
  readonly lengthMilliseconds: number;
  readonly endless: boolean;
  readonly opacity: number;
  readonly blend: BlendName;
  readonly fadeInMilliseconds: number;
  readonly fadeOutMilliseconds: number;
  readonly program: ClipProgram;
}
