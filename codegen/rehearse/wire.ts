/** Reads a WS2812B data wire as a strict pixel would: by the length of every single pulse. */

export type PulseKind = 't0h' | 't0l' | 't1h' | 't1l';

interface Window {
  readonly min: number;
  readonly max: number;
}

/** In nanoseconds. Source: intersection of the revisions of the WS2812B datasheet, data transfer time. */
export const ws2812bWindows: Readonly<Record<PulseKind, Window>> = {
  t0h: { min: 250, max: 380 },
  t0l: { min: 750, max: 1000 },
  t1h: { min: 750, max: 950 },
  t1l: { min: 300, max: 420 },
};

/** A low this long shows the frame. Source: newest revisions, more than 280 us; older ones ask for 50. */
const latchNanoseconds = 300_000;

/** A high longer than this is read as a 1: halfway between the windows, near the 563 to 625 ns measured on parts. */
const longHighNanoseconds = 565;

export interface WireFrame {
  /** When its first and its last pulse began, in cycles. */
  readonly startCycle: number;
  readonly endCycle: number;
  readonly bits: number;
  /** Whole bytes; bits left over are only counted. */
  readonly bytes: Uint8Array;
}

export interface OutsidePulse {
  readonly kind: PulseKind;
  readonly nanoseconds: number;
  /** Number of the frame, and of the bit in it, both from 0. */
  readonly frame: number;
  readonly bit: number;
}

export interface PulseRecord {
  /** Shortest and longest of each kind in nanoseconds; null where there was none. */
  readonly pulses: Record<PulseKind, [min: number, max: number] | null>;
  readonly outsideCount: number;
  /** The first few, with their place. */
  readonly outside: readonly OutsidePulse[];
}

const keptOutside = 10;

export class WireReader {
  /** Called at the first edge of each frame. */
  onFrameStart: (cycle: number) => void = () => {};
  onFrameEnd: (frame: WireFrame) => void = () => {};

  private readonly nanosecondsPerCycle: number;
  private readonly pulses: Record<PulseKind, [number, number] | null> = {
    t0h: null,
    t0l: null,
    t1h: null,
    t1l: null,
  };
  private readonly outside: OutsidePulse[] = [];
  private outsideCount = 0;
  private frame = 0;
  private inFrame = false;
  private startCycle = 0;
  private roseAt = 0;
  private fellAt = 0;
  private bits = 0;
  private lastBit = 0;
  private bytes: number[] = [];
  private byte = 0;

  constructor(hertz: number) {
    this.nanosecondsPerCycle = 1e9 / hertz;
  }

  edge(cycle: number, high: boolean): void {
    if (high) this.rise(cycle);
    else this.fall(cycle);
  }

  /** To be told once at the end, so that a frame whose latch has passed counts. */
  finish(cycle: number): PulseRecord {
    const low = this.fellAt > this.roseAt;
    if (this.inFrame && low && this.nanoseconds(cycle - this.fellAt) >= latchNanoseconds) this.endFrame();
    return { pulses: this.pulses, outsideCount: this.outsideCount, outside: this.outside };
  }

  private rise(cycle: number): void {
    this.roseAt = cycle;
    if (this.inFrame) {
      const low = this.nanoseconds(cycle - this.fellAt);
      if (low < latchNanoseconds) {
        this.measure(this.lastBit === 0 ? 't0l' : 't1l', low);
        return;
      }
      this.endFrame();
    }
    this.inFrame = true;
    this.startCycle = cycle;
    this.onFrameStart(cycle);
  }

  private fall(cycle: number): void {
    if (!this.inFrame) return;
    this.fellAt = cycle;
    const high = this.nanoseconds(cycle - this.roseAt);
    this.lastBit = high > longHighNanoseconds ? 1 : 0;
    this.measure(this.lastBit === 0 ? 't0h' : 't1h', high);
    this.byte = (this.byte << 1) | this.lastBit;
    this.bits += 1;
    if (this.bits % 8 === 0) {
      this.bytes.push(this.byte & 255);
      this.byte = 0;
    }
  }

  private measure(kind: PulseKind, nanoseconds: number): void {
    const seen = this.pulses[kind];
    if (seen === null) this.pulses[kind] = [nanoseconds, nanoseconds];
    else if (nanoseconds < seen[0]) seen[0] = nanoseconds;
    else if (nanoseconds > seen[1]) seen[1] = nanoseconds;
    const { min, max } = ws2812bWindows[kind];
    if (nanoseconds >= min && nanoseconds <= max) return;
    this.outsideCount += 1;
    const bit = kind === 't0l' || kind === 't1l' ? this.bits - 1 : this.bits;
    if (this.outside.length < keptOutside) this.outside.push({ kind, nanoseconds, frame: this.frame, bit });
  }

  private endFrame(): void {
    this.onFrameEnd({
      startCycle: this.startCycle,
      endCycle: this.fellAt,
      bits: this.bits,
      bytes: Uint8Array.from(this.bytes),
    });
    this.inFrame = false;
    this.frame += 1;
    this.bits = 0;
    this.bytes = [];
    this.byte = 0;
  }

  private nanoseconds(cycles: number): number {
    return cycles * this.nanosecondsPerCycle;
  }
}
