/** The stage without its thread: what it takes, plays and tells. Rules: app/web/SPEC.md. */
import { expect, test } from 'vitest';
import { differenceOf } from '../../app/web/worker/difference.ts';
import type { MomentChange, StageReply } from '../../app/web/worker/protocol.ts';
import { Stage, transferable } from '../../app/web/worker/stage.ts';
import { press } from '../../engine/controls/press.ts';
import { frame, stillMoment } from '../../engine/look/frame.ts';
import { loadPiece } from '../../engine/piece/load.ts';
import { samplePiece, sampleText, scoreOf } from './browser/samples.ts';

const text = sampleText('ferrymans-hat');
const hat = samplePiece('ferrymans-hat');
const score = scoreOf(hat);

type Moment = Extract<StageReply, { kind: 'moment' }>;

function openStage(): Stage {
  const stage = new Stage();
  expect(stage.answer({ kind: 'open', revision: 1, text })[0]!.kind).toBe('opened');
  return stage;
}

function put(stage: Stage, revision: number, change: MomentChange): Moment {
  return stage.answer({ kind: 'put', revision, change })[0] as Moment;
}

/** From the piece that the samples give, which is the one on stage. */
function edit(stage: Stage, revision: number, after: unknown): readonly StageReply[] {
  return stage.answer({ kind: 'edit', revision, difference: differenceOf(hat, after) });
}

function play(stage: Stage, elapsedMs: number, downAt?: number, upAt?: number): Moment {
  const edges = [
    ...(downAt === undefined ? [] : [{ atMs: downAt, button: 0, down: true }]),
    ...(upAt === undefined ? [] : [{ atMs: upAt, button: 0, down: false }]),
  ];
  return stage.answer({ kind: 'play', revision: 1, elapsedMs, edges })[0] as Moment;
}

test('W2 the stage plays button edges as the engine plays a press script', () => {
  const stage = openStage();
  const told = [...play(stage, 500, 100, 250).events, ...play(stage, 900, 20, 800).events];
  const contacts = [
    { ms: 100, button: 0, down: true },
    { ms: 250, button: 0, down: false },
    { ms: 520, button: 0, down: true },
    { ms: 1300, button: 0, down: false },
  ];
  expect(told).toEqual(press(score, { contacts, endMs: 1400 }));
  expect(told.length).toBeGreaterThan(0);
});

test('W4 the frame at a sought moment is the one of the engine, and playing there gives the same', () => {
  const sought = openStage();
  const told = put(sought, 1, { look: 2, ms: 1234 });
  const expected = frame(score, stillMoment(2, 1234, hat.output.startBrightness));
  expect(told.frame).toMatchObject({ levels: expected.levels, drive: expected.drive });
  expect(told.frame!.milliamps).toBe(expected.milliamps);
  // The page gets buffers of its own.
  expect(transferable(told)).toEqual([told.frame!.levels.buffer, told.frame!.drive.buffer]);

  const played = openStage();
  put(played, 1, { look: 2 });
  let last = play(played, 1220);
  expect(last.frame).not.toBeNull();
  last = play(played, 14);
  expect(last.moment.ms).toBe(1234);
  // Between two ticks nothing is drawn anew.
  expect(last.frame).toBeNull();
});

test('W6 an edited piece plays on where it was, at the brightness it had', () => {
  const stage = openStage();
  put(stage, 1, { look: 3, ms: 700, brightness: 128, paused: true });
  const [taken] = edit(stage, 2, { ...hat, name: 'Other hat' });
  expect(taken).toMatchObject({ kind: 'taken', revision: 2 });
  const { moment, revision } = play(stage, 50);
  expect(revision).toBe(2);
  expect(moment).toMatchObject({ look: 3, ms: 700, brightness: 128, paused: true });
});

test('W17 with an edit comes the frame that it makes of the moment', () => {
  const stage = openStage();
  put(stage, 1, { look: 2, ms: 1234 });
  const dimmed = { ...hat, output: { ...hat.output, curve: 'srgb' as const, balance: [256, 128, 64] } };
  const [, moment] = edit(stage, 2, dimmed) as [StageReply, Moment];
  expect(moment.asked).toBe(false);
  const expected = frame(scoreOf(dimmed), stillMoment(2, 1234, hat.output.startBrightness));
  expect(moment.frame!.drive).toEqual(expected.drive);
});

test('W7 a file or an edit with errors is refused, and the stage plays on', () => {
  const stage = openStage();
  play(stage, 300);
  const broken = text.replace('"zone": "badge"', '"zone": "nowhere"');
  const refused = stage.answer({ kind: 'open', revision: 2, text: broken });
  expect(refused).toEqual([{ kind: 'refused', revision: 2, diagnostics: loadPiece(broken).diagnostics }]);
  const nowhere = structuredClone(hat);
  nowhere.looks[0]!.tracks[0]!.clips[0]!.zone = 'nowhere';
  expect(edit(stage, 3, nowhere)[0]!.kind).toBe('refused');
  const { moment, revision } = play(stage, 100);
  expect({ ms: moment.ms, revision }).toEqual({ ms: 400, revision: 1 });
});

test('W11 a change that was meant for an older piece is not carried out', () => {
  const stage = openStage();
  edit(stage, 2, hat);
  expect(put(stage, 1, { look: 4 }).moment.look).toBe(0);
});

test('W7 with nothing on stage there is nothing to play', () => {
  expect(new Stage().answer({ kind: 'play', revision: 0, elapsedMs: 10, edges: [] })).toEqual([]);
});
