/** What came out of the data pin, frame by frame, with the moment that the chip meant to show. */
import type { Moment } from '../../engine/look/moment.ts';
import { readShown, type SettingName } from './shown.ts';
import { type PulseRecord, type WireFrame, WireReader } from './wire.ts';

export interface RecordedFrame extends WireFrame {
  readonly moment: Moment;
  /** When the moment was filled in: the cycle of the last write to its uptime. */
  readonly momentCycle: number;
}

/** An action has set something, whether or not a frame has shown it yet. */
export interface SettingChange {
  readonly uptimeMs: number;
  readonly setting: SettingName;
  readonly value: number;
}

export interface Recording extends PulseRecord {
  readonly frames: readonly RecordedFrame[];
  /** Empty if the emulator or the sketch does not tell. */
  readonly settings: readonly SettingChange[];
  readonly hertz: number;
}

/** Fed by an emulator, in order of cycles. */
export class Recorder {
  private readonly hertz: number;
  private readonly wire: WireReader;
  private readonly frames: RecordedFrame[] = [];
  private readonly settings: SettingChange[] = [];
  private momentCycle = 0;

  /** `readMemory` gives the bytes of `shown` as they are when it is called. */
  constructor(hertz: number, readMemory: () => Uint8Array) {
    this.hertz = hertz;
    this.wire = new WireReader(hertz);
    let begun: { moment: Moment; momentCycle: number } | undefined;
    this.wire.onFrameStart = () => {
      begun = { moment: readShown(readMemory()), momentCycle: this.momentCycle };
    };
    this.wire.onFrameEnd = (frame) => this.frames.push({ ...frame, ...begun! });
  }

  pinChanged(cycle: number, high: boolean): void {
    this.wire.edge(cycle, high);
  }

  momentWritten(cycle: number): void {
    this.momentCycle = cycle;
  }

  settingWritten(change: SettingChange): void {
    this.settings.push(change);
  }

  finish(cycle: number): Recording {
    return { frames: this.frames, settings: this.settings, hertz: this.hertz, ...this.wire.finish(cycle) };
  }
}
