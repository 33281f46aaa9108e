/** What the clip in hand takes of its look, kept up to date. */
import type { ClipPosition, LoftReply, LoftRequest } from '../worker/protocol.ts';
import type { ClipWeight } from '../worker/weigh-clip.ts';
import { Store } from './store.ts';

type Weighed = Extract<LoftReply, { kind: 'clip-weighed' }>;

export class ClipLink {
  /** Null until it is known; an older one stays meanwhile. */
  readonly weight = new Store<ClipWeight | null>(null);

  private clip: ClipPosition | null = null;
  private revision = 0;
  private brightness = 0;

  constructor(private readonly ask: (request: LoftRequest) => void) {}

  /** This clip is in hand, until the next call. */
  want(clip: ClipPosition | null): void {
    this.clip = clip;
    this.weight.set(null);
    if (this.revision > 0) this.weigh(this.revision, this.brightness);
  }

  weigh(revision: number, brightness: number): void {
    this.revision = revision;
    this.brightness = brightness;
    if (this.clip !== null) this.ask({ kind: 'weigh-clip', revision, brightness, clip: this.clip });
  }

  take({ revision, brightness, clip, weight }: Weighed): void {
    if (!isSame(clip, this.clip)) return;
    if (revision === this.revision && brightness === this.brightness) this.weight.set(weight);
  }
}

function isSame(a: ClipPosition, b: ClipPosition | null): boolean {
  return b !== null && a.look === b.look && a.track === b.track && a.clip === b.clip;
}
