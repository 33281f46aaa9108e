/** Slow work in slices. Rules: app/web/SPEC.md. */
import { expect, onTestFinished, test, vi } from 'vitest';
import { type Job, Slices } from '../../app/web/worker/slices.ts';

/** A clock that moves on by 5 ms whenever it is read. */
function slowClock(): () => number {
  let now = 0;
  return () => {
    now += 5;
    return now;
  };
}

function job(name: string, priority: number, steps: number, log: string[]): Job {
  const work = (function* () {
    for (let step = 0; step < steps; step++) {
      log.push(name);
      yield;
    }
  })();
  return { name, priority, work, pause: () => log.push('|') };
}

const settled = (log: string[], text: string) => vi.waitFor(() => expect(log.join('')).toBe(text));

test('W12 a slice ends after some milliseconds, and the urgent job comes first', async () => {
  const slices = new Slices(slowClock());
  const log: string[] = [];
  slices.add(job('b', 2, 3, log));
  slices.add(job('a', 1, 4, log));
  await settled(log, 'aaa|a|bbb||');
});

test('W12 a more urgent job overtakes between two slices', async () => {
  const slices = new Slices(slowClock());
  const log: string[] = [];
  const urgent = job('u', 1, 1, log);
  const slow = job('s', 5, 6, log);
  let slicesSeen = 0;
  slices.add({
    ...slow,
    pause: () => {
      log.push('|');
      slicesSeen += 1;
      if (slicesSeen === 1) slices.add(urgent);
    },
  });
  await settled(log, 'sss|u|sss||');
});

test('W11 a newer job of the same name takes the place of the older, and clearing drops all', async () => {
  const slices = new Slices(slowClock());
  const log: string[] = [];
  slices.add(job('x', 1, 9, log));
  slices.add({ ...job('x', 1, 2, log), pause: () => log.push('new') });
  await settled(log, 'xxnew');
  slices.add(job('y', 1, 9, log));
  slices.clear();
  slices.add(job('z', 1, 1, log));
  await settled(log, 'xxnewz|');
});

test('W12 a job that breaks does not stop the others', async () => {
  const slices = new Slices(slowClock());
  const log: string[] = [];
  const errors: unknown[] = [];
  const told = (error: unknown) => errors.push(error);
  const before = process.listeners('uncaughtException');
  process.removeAllListeners('uncaughtException');
  process.on('uncaughtException', told);
  onTestFinished(() => {
    process.removeListener('uncaughtException', told);
    for (const listener of before) process.on('uncaughtException', listener);
  });
  const broken = (function* () {
    yield;
    throw new Error('a snapped thread');
  })();
  slices.add({ name: 'broken', priority: 1, work: broken });
  slices.add(job('c', 2, 2, log));
  await settled(log, 'cc|');
  await vi.waitFor(() => expect(String(errors[0])).toContain('a snapped thread'));
});

test('W12 while a hand moves, what it does not hold rests between slices, and what it holds does not wait', async () => {
  const slices = new Slices();
  const log: string[] = [];
  const busy = (name: string, priority: number, slicesLong: number): Job => ({
    name,
    priority,
    work: (function* () {
      for (const end = performance.now() + 13 * slicesLong; performance.now() < end; ) yield;
    })(),
    pause: () => log.push(name),
  });
  slices.ease(60_000);
  slices.add(busy('slow', 1, 60));
  await vi.waitFor(() => expect(log).toContain('slow'));
  const before = log.length;
  slices.add(busy('held', 0, 3));
  await vi.waitFor(() => expect(log.filter((name) => name === 'held').length).toBeGreaterThanOrEqual(1));
  const held = log.indexOf('held');
  expect(held - before).toBeLessThanOrEqual(1);
  slices.clear();
});
