/** What a piece asks of its sketch. Whatever it does not ask for is left out of the text. */
import type { BlendName } from '../../engine/look/blend.ts';
import type { Score, ScoredClip } from '../../engine/look/score.ts';
import type { Action, Button } from '../../engine/piece/schema.ts';
import { isLinear, keyedReads, mayLeaveRange, overshoots } from './keyed.ts';
import type { Features } from './select.ts';

/** What the printed patterns of a sketch read, all together. */
export interface PatternNeeds {
  readonly time: boolean;
  readonly turn: boolean;
  readonly places: boolean;
}

export function featuresOf(score: Score, needs: PatternNeeds, target: 'chip' | 'host' | 'bundle'): Features {
  const { controls, looks } = score.piece;
  const clips = score.looks.flatMap((look) => look.clips);
  const actions = new Set(controls.buttons.flatMap(actionsOf).map((action) => action.do));
  const keyed = clips.flatMap((clip) => keyedReads(clip.program)).map(({ parameter }) => parameter);
  const easings = keyed.flatMap((parameter) => parameter.keys.map((key) => key.easing));
  const dissolves = looks.some((look) => look.dissolveMilliseconds > 0);
  return {
    host: target !== 'chip',
    bundle: target === 'bundle',
    ...needs,
    keyed: keyed.length > 0,
    eased: easings.some((table) => !isLinear(table)),
    overshoot: easings.some(overshoots),
    clamped: keyed.some(mayLeaveRange),
    keyedLevel: keyed.some((parameter) => parameter.to === 'level'),
    ratio: needs.turn || keyed.length > 0,
    clipMs: needs.time || needs.turn || keyed.length > 0 || clips.some(hasFade),
    clips: clips.length > 0,
    fades: clips.some(hasFade),
    endless: clips.some((clip) => clip.endless),
    dissolve: dissolves,
    moveOn: looks.some((look) => look.moveOn !== undefined),
    buttons: controls.buttons.length > 0,
    gestures: controls.buttons.some((button) => button.hold !== undefined || button.double !== undefined),
    nextLook: actions.has('next-look'),
    previousLook: actions.has('previous-look'),
    goToLook: actions.has('go-to-look'),
    brightnessStep: actions.has('brightness-step'),
    blackout: actions.has('blackout'),
    pause: actions.has('pause'),
    unitMul: clips.some((clip) => hasFade(clip) || needsUnitMul.has(clip.blend)),
    unitMix: dissolves || clips.some((clip) => clip.blend !== 'plus-lighter'),
    normal: clips.some((clip) => clip.blend === 'normal'),
    multiply: clips.some((clip) => clip.blend === 'multiply'),
    screen: clips.some((clip) => clip.blend === 'screen'),
    darken: clips.some((clip) => clip.blend === 'darken'),
    lighten: clips.some((clip) => clip.blend === 'lighten'),
    plusLighter: clips.some((clip) => clip.blend === 'plus-lighter'),
    equalCurrents: new Set(score.current.channelTenths).size === 1,
    balance: score.output.balance.some((balance) => balance !== 256),
    keepAlive: score.output.keepAliveThreshold > 0,
  };
}

const needsUnitMul: ReadonlySet<BlendName> = new Set(['multiply', 'screen', 'plus-lighter']);

function actionsOf(button: Button): Action[] {
  return [button.press, button.hold, button.double].filter((action) => action !== undefined);
}

function hasFade(clip: ScoredClip): boolean {
  return clip.fadeInMilliseconds > 0 || (!clip.endless && clip.fadeOutMilliseconds > 0);
}
