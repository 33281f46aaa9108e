/** What a maker should know about the figures of a power report. */
import { keepAliveThreshold } from '../light/keep-alive.ts';
import type { Score } from '../look/score.ts';
import { type CurrentModel, milliampsOf } from './current.ts';
import type { LookPower } from './loop-meter.ts';

export interface PowerWarning {
  readonly code: string;
  readonly message: string;
  readonly advice: string;
}

export interface NamedLookPower extends LookPower {
  readonly name: string;
}

/**
 * A power bank takes its load for removed below some current. The IP5306 datasheet, load-removal timer:
 * under 45 mA for 32 s. Others switch off below 50 to 60 mA (from memory), so the higher figure is asked for.
 */
export const powerBankThresholdMilliamps = 60;

/** Within this share of the limit a peak leaves too little room for spread between parts. Common practice, no source. */
const nearLimit = 0.9;

export function powerWarnings(score: Score, looks: readonly NamedLookPower[]): PowerWarning[] {
  const { current, piece } = score;
  const { limitMilliamps, keepAliveMilliamps, volts } = piece.supply;
  const warnings: PowerWarning[] = [];

  const restMilliamps = milliampsOf(current, 0);
  if (restMilliamps >= limitMilliamps) {
    warnings.push({
      code: 'limit-below-rest',
      message: `The dark pixels and the chip alone draw ${whole(restMilliamps)} mA, which uses up the limit of ${limitMilliamps} mA: every look stays dark.`,
      advice: 'Use fewer pixels or a supply that gives more, and set its limit.',
    });
  }

  const dimmed = looks.filter((look) => look.limitedShare > 0);
  if (dimmed.length > 0) {
    warnings.push({
      code: 'limiter-active',
      message: `The limit of ${limitMilliamps} mA dims ${shares(dimmed)}.`,
      advice: 'Lower the start brightness or the opacity of clips, or use a supply that gives more.',
    });
  }

  const near = looks.filter(
    (look) => look.limitedShare === 0 && look.peakMilliamps >= nearLimit * limitMilliamps,
  );
  if (near.length > 0) {
    warnings.push({
      code: 'peak-near-limit',
      message: `The peak of ${names(near)} is within a tenth of the limit of ${limitMilliamps} mA.`,
      advice: 'Leave some room, as pixels of one part differ; measure the finished piece.',
    });
  }

  const faint = looks.filter((look) => look.lowestTenSecondMilliamps < powerBankThresholdMilliamps);
  if (volts >= 4.5 && volts <= 5.5 && faint.length > 0) {
    warnings.push({
      code: 'power-bank-may-switch-off',
      message: `For ten seconds and more, ${names(faint)} may draw less than ${powerBankThresholdMilliamps} mA, at which many power banks switch off.`,
      advice:
        'Try it with your power bank; set keepAliveMilliamps, brighten the look, or use another supply.',
    });
  }

  if (keepAliveMilliamps > 0 && !reachesKeepAlive(keepAliveMilliamps, current)) {
    warnings.push({
      code: 'keep-alive-out-of-reach',
      message: `So few pixels cannot draw the ${keepAliveMilliamps} mA that the power bank is to see.`,
      advice: 'Lower keepAliveMilliamps, or use a supply that does not switch off.',
    });
  }
  return warnings;
}

function reachesKeepAlive(keepAliveMilliamps: number, current: CurrentModel): boolean {
  const allOn = 255 * current.pixels * current.channelTenths.reduce((sum, tenths) => sum + tenths, 0);
  return allOn >= keepAliveThreshold(keepAliveMilliamps, current);
}

function whole(milliamps: number): string {
  return milliamps.toFixed(0);
}

function names(looks: readonly NamedLookPower[]): string {
  return looks.map((look) => `"${look.name}"`).join(', ');
}

/** `"Signal" (50 % of its frames), "Ebb" (3 %)` */
function shares(looks: readonly NamedLookPower[]): string {
  return looks
    .map(({ name, limitedShare }, index) => {
      const share = `${whole(Math.ceil(limitedShare * 100))} %`;
      return `"${name}" (${index === 0 ? `${share} of its frames` : share})`;
    })
    .join(', ');
}
