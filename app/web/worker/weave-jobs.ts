/** Weaving as jobs for `Slices`: what has been woven is handed over at the end of each slice. */
import type { Score } from '../../../engine/look/score.ts';
import type { LoftReply, WeaveRequest } from './protocol.ts';
import type { Job } from './slices.ts';
import { soloScore, weaveCurrents, weaveRows } from './weave.ts';

type Post = (reply: LoftReply, transfer?: ArrayBuffer[]) => void;

/** Figures of the current come after all cloths that are looked at. */
const currentsAfter = 40;

/** The names of all jobs that a cloth may have. */
export const jobsOfCloth = (cloth: string) => [`weave ${cloth}`, `currents ${cloth}`];

export function weaveJobs(score: Score, request: WeaveRequest, post: Post): Job[] {
  const rows = rowsJob(score, request, post);
  return request.currents ? [rows, currentsJob(score, request, post)] : [rows];
}

function rowsJob(score: Score, request: WeaveRequest, post: Post): Job {
  const { cloth, revision, clip, firstRow, count } = request;
  const woven = weaveRows(clip === undefined ? score : soloScore(score, clip), request, firstRow, count);
  let fromRow = firstRow;
  let levels: Uint8Array[] = [];
  const handOver = () => {
    if (levels.length === 0) return;
    const rows = levels.length;
    const sheet = joined(levels);
    levels = [];
    post({ kind: 'woven', revision, cloth, fromRow, rows, levels: sheet }, [sheet.buffer]);
  };
  const work = (function* () {
    for (const { row, levels: borrowed } of woven) {
      // Rows are handed over as they lie: the first one does not follow the last one.
      if (row !== fromRow + levels.length) {
        handOver();
        fromRow = row;
      }
      levels.push(borrowed.slice());
      yield;
    }
  })();
  const pause = () => {
    const { length } = levels;
    handOver();
    fromRow += length;
  };
  return { name: jobsOfCloth(cloth)[0]!, priority: request.priority, work, pause };
}

function currentsJob(score: Score, request: WeaveRequest, post: Post): Job {
  const { cloth, revision, priority } = request;
  const steps = weaveCurrents(score, request);
  let fromRow = 0;
  let peaks: number[] = [];
  const work = (function* () {
    for (const peak of steps) {
      if (peak !== null) peaks.push(peak);
      yield;
    }
  })();
  const pause = () => {
    if (peaks.length === 0) return;
    const milliamps = Float32Array.from(peaks);
    post({ kind: 'currents', revision, cloth, fromRow, milliamps }, [milliamps.buffer]);
    fromRow += peaks.length;
    peaks = [];
  };
  return { name: jobsOfCloth(cloth)[1]!, priority: priority + currentsAfter, work, pause };
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((size, part) => size + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
