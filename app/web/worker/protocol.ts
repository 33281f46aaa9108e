/**
 * What the page and its two workers say to each other. Generated JavaScript runs in the workers only.
 *
 *   stage   plays: opens and prepares pieces, steps the player, draws the frame of the moment
 *   loft    weaves: cloths, power, the sketch, the faults of a pattern; slow work in short slices
 *
 * Every piece that is opened or edited has a revision, counted by the page. Replies carry the revision
 * they were worked out for, and the page drops those of an older one. Buffers are transferred.
 */
import type { Sketch } from '../../../codegen/sketch.ts';
import type { PlayerEvent } from '../../../engine/controls/player.ts';
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { Moment } from '../../../engine/look/moment.ts';
import type { ChipName } from '../../../engine/parts/chips.ts';
import type { LibraryPattern } from '../../../engine/pattern/library.ts';
import type { ParameterDescription, PatternDefinition, Piece } from '../../../engine/piece/schema.ts';
import type { Difference } from './difference.ts';
import type { Glimpse } from './glimpse.ts';
import type { SwatchWeight } from './weigh.ts';
import type { ClipWeight } from './weigh-clip.ts';

/** Position of a clip in the piece: `looks[look].tracks[track].clips[clip]`. */
export interface ClipPosition {
  readonly look: number;
  readonly track: number;
  readonly clip: number;
}

/** What the page shows of a prepared piece without knowing how it is played. */
export interface PieceView {
  /** Worn places in millimetres, x and y (up) of each pixel in wire order. */
  readonly places: Float32Array;
  /** 1 for a pixel that is wired but never lit. */
  readonly hidden: Uint8Array;
  /** The run of each pixel, by its rank on the line, and its position there before anything was removed. */
  readonly runs: Uint16Array;
  readonly positions: Uint16Array;
  /** Bytes of drive a pixel, and where red, green, blue (and white) stand among them. */
  readonly channels: 3 | 4;
  readonly order: readonly number[];
  readonly limitMilliamps: number;
  readonly clips: readonly ClipView[];
}

export interface ClipView extends ClipPosition {
  /** The pixel that stands for each index of the clip's zone: the columns of its cloth. */
  readonly columns: Uint16Array;
}

/** A change of a button's contact. */
export interface ContactEdge {
  /** Milliseconds from the end of the last step that was played; 1 is the very next. */
  readonly atMs: number;
  readonly button: number;
  readonly down: boolean;
}

/** What the maker may set from outside of the piece's own buttons. */
export type MomentChange = Partial<Pick<Moment, 'look' | 'ms' | 'brightness' | 'blackout' | 'paused'>>;

/** What the picture shows by itself: a track of the look that plays, or the pixels of a zone. */
export type Spotlight = { readonly zone: string } | { readonly track: number };

export type StageRequest =
  | { readonly kind: 'open'; readonly revision: number; readonly text: string }
  /** From the piece on stage, whose single values the page's editing keeps sound. */
  | { readonly kind: 'edit'; readonly revision: number; readonly difference: Difference }
  | {
      readonly kind: 'play';
      readonly revision: number;
      readonly elapsedMs: number;
      readonly edges: readonly ContactEdge[];
    }
  | { readonly kind: 'put'; readonly revision: number; readonly change: MomentChange }
  | { readonly kind: 'spotlight'; readonly revision: number; readonly spotlight: Spotlight | null };

interface OnStage {
  readonly revision: number;
  readonly view: PieceView;
  readonly warnings: readonly Diagnostic[];
}

export type StageReply =
  /** A moment follows at once, without being asked for. */
  | ({ readonly kind: 'opened'; readonly piece: Piece } & OnStage)
  /** The edit is on stage; here, too, a moment follows. */
  | ({ readonly kind: 'taken' } & OnStage)
  | { readonly kind: 'refused'; readonly revision: number; readonly diagnostics: readonly Diagnostic[] }
  /** Pixels that stand in the light of a zone; null for all. A track's light is in the frames themselves. */
  | { readonly kind: 'spotlit'; readonly revision: number; readonly pixels: Uint16Array | null }
  | {
      readonly kind: 'moment';
      readonly revision: number;
      readonly moment: Moment;
      readonly events: readonly PlayerEvent[];
      /** Null when nothing has changed since the last one. */
      readonly frame: ShownFrame | null;
      /** False where the stage speaks by itself. */
      readonly asked: boolean;
    };

export interface ShownFrame {
  readonly levels: Uint8Array;
  readonly drive: Uint8Array;
  /** Of the whole piece, whatever part of it is shown by itself. */
  readonly milliamps: number;
  /** The limiter dimmed it. */
  readonly limited: boolean;
}

/** A stretch of a look, or of one of its clips alone, as rows of levels from the top down. */
export interface WeaveRequest {
  readonly kind: 'weave';
  readonly revision: number;
  /** The page's name for the cloth, handed back with its rows. */
  readonly cloth: string;
  readonly look: number;
  /** Only this clip, on black, at full opacity. */
  readonly clip?: ClipPosition;
  /** In the time of the look. */
  readonly fromMs: number;
  readonly toMs: number;
  /** Of the whole cloth; those that are wanted begin at `firstRow` and go on from the top. */
  readonly rows: number;
  readonly firstRow: number;
  readonly count: number;
  /** The current of every row is wanted as well, in its own time. */
  readonly currents: boolean;
  readonly brightness: number;
  /** Smaller comes first. */
  readonly priority: number;
}

/** A swatch of a pattern on the sample strip. It outlives revisions: the pattern comes along. */
export interface DrawSwatchRequest {
  readonly kind: 'draw-swatch';
  /** The page's name for it, handed back. */
  readonly swatch: string;
  readonly pattern: string;
  readonly own: readonly PatternDefinition[];
}

/** A look at a piece that is not on stage. */
export interface GlimpseRequest {
  readonly kind: 'glimpse';
  /** The page's name for it, handed back. */
  readonly name: string;
  readonly text: string;
}

export type LoftRequest =
  /** From the piece that it holds, or from nothing. */
  | { readonly kind: 'hold'; readonly revision: number; readonly difference: Difference }
  | WeaveRequest
  /** Nobody looks at the cloth any more. */
  | { readonly kind: 'unweave'; readonly cloth: string }
  | { readonly kind: 'measure'; readonly revision: number; readonly brightness: number }
  | DrawSwatchRequest
  | GlimpseRequest
  | {
      readonly kind: 'weigh';
      readonly revision: number;
      readonly brightness: number;
      /** Patterns as clips name them. */
      readonly patterns: readonly string[];
    }
  | {
      readonly kind: 'weigh-clip';
      readonly revision: number;
      readonly brightness: number;
      readonly clip: ClipPosition;
    }
  | { readonly kind: 'sketch'; readonly revision: number; readonly board: ChipName }
  | {
      readonly kind: 'proofread';
      readonly reading: number;
      readonly source: string;
      readonly parameters: readonly ParameterDescription[];
    };

export interface LookFigures {
  readonly averageMilliamps: number;
  readonly peakMilliamps: number;
}

export type LoftReply =
  | { readonly kind: 'library'; readonly patterns: readonly LibraryPattern[] }
  | {
      readonly kind: 'woven';
      readonly revision: number;
      readonly cloth: string;
      readonly fromRow: number;
      readonly rows: number;
      /** Levels of all pixels, row by row. */
      readonly levels: Uint8Array;
    }
  | {
      readonly kind: 'currents';
      readonly revision: number;
      readonly cloth: string;
      readonly fromRow: number;
      /** The highest current within each row's stretch of time. */
      readonly milliamps: Float32Array;
    }
  | {
      readonly kind: 'measured';
      readonly revision: number;
      readonly brightness: number;
      readonly looks: readonly LookFigures[];
      readonly warnings: readonly Pick<Diagnostic, 'code' | 'message' | 'advice'>[];
    }
  | {
      readonly kind: 'swatch-drawn';
      readonly swatch: string;
      /** Row by row, as `drawSwatch` says; null for a pattern that cannot be played. */
      readonly levels: Uint8Array | null;
    }
  | { readonly kind: 'glimpsed'; readonly name: string; readonly glimpse: Glimpse | null }
  | {
      readonly kind: 'weighed';
      readonly revision: number;
      readonly brightness: number;
      readonly pattern: string;
      readonly weight: SwatchWeight | null;
    }
  | {
      readonly kind: 'clip-weighed';
      readonly revision: number;
      readonly brightness: number;
      readonly clip: ClipPosition;
      readonly weight: ClipWeight | null;
    }
  | {
      readonly kind: 'sketched';
      readonly revision: number;
      readonly board: ChipName;
      readonly sketch: Sketch | null;
      readonly diagnostics: readonly Diagnostic[];
    }
  | { readonly kind: 'proofread'; readonly reading: number; readonly diagnostics: readonly Diagnostic[] };
