/**
 * Long work in short slices, so that a new request never waits long for an old one. A job is a
 * generator that yields wherever it may be interrupted; the most urgent job goes first.
 */

/** Well under 30 ms: a request that comes in the middle of a slice should feel immediate. */
const sliceMilliseconds = 12;
/** Between two slices while others need the processor more. */
const restMilliseconds = 24;
/** Of a job that never rests: what the hand holds. */
const urgent = 0;

export interface Job {
  /** Smaller comes first; among equals the older one. */
  readonly priority: number;
  /** A newer job of the same name replaces this one. */
  readonly name: string;
  readonly work: Iterator<void, void>;
  /** Called at the end of each slice, for jobs that hand over what they have so far. */
  readonly pause?: () => void;
  /** Stays when the others are dropped: it is not about the open piece. */
  readonly lasting?: boolean;
}

export class Slices {
  private jobs: Job[] = [];
  private running = false;
  private easedUntil = 0;
  private resting: ReturnType<typeof setTimeout> | undefined;
  private readonly channel = new MessageChannel();

  constructor(private readonly now: () => number = () => performance.now()) {
    this.channel.port1.onmessage = () => this.slice();
  }

  add(job: Job): void {
    this.jobs = this.jobs.filter((other) => other.name !== job.name);
    const after = this.jobs.findIndex((other) => other.priority > job.priority);
    this.jobs.splice(after < 0 ? this.jobs.length : after, 0, job);
    if (!this.running) {
      this.running = true;
      this.next();
    } else if (this.resting !== undefined && job.priority === urgent) {
      this.next();
    }
  }

  /** For so long, what is not urgent rests between its slices: the picture is drawn meanwhile. */
  ease(milliseconds: number): void {
    this.easedUntil = this.now() + milliseconds;
  }

  drop(name: string): void {
    this.jobs = this.jobs.filter((job) => job.name !== name);
  }

  /** Drops every job but the lasting ones: what they were working on is out of date. */
  clear(): void {
    this.jobs = this.jobs.filter(({ lasting }) => lasting === true);
  }

  private goOn(): void {
    const first = this.jobs[0];
    if (first === undefined || first.priority === urgent || this.now() >= this.easedUntil) this.next();
    else this.resting = setTimeout(() => this.next(), restMilliseconds);
  }

  /** A message to ourselves queues up behind the requests that have come in meanwhile. */
  private next(): void {
    clearTimeout(this.resting);
    this.resting = undefined;
    this.channel.port2.postMessage(null);
  }

  private slice(): void {
    const job = this.jobs[0];
    if (job === undefined) {
      this.running = false;
      return;
    }
    const end = this.now() + sliceMilliseconds;
    // A job that breaks counts as done: the others go on, and the error is told as any other.
    let done = true;
    try {
      do {
        done = true;
        done = job.work.next().done === true;
      } while (!done && this.now() < end);
      job.pause?.();
    } finally {
      if (done) this.jobs = this.jobs.filter((other) => other !== job);
      this.goOn();
    }
  }
}
