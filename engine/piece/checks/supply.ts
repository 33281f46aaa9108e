/** The supply: its floor lies well below its limit, and its volts suit the parts. */
import { pixelCount } from '../../layout/shapes.ts';
import { chips } from '../../parts/chips.ts';
import { pixelParts } from '../../parts/pixels.ts';
import type { Findings } from '../findings.ts';
import type { Piece } from '../schema.ts';

export function checkSupply(piece: Piece, findings: Findings): void {
  const { limitMilliamps, keepAliveMilliamps, volts } = piece.supply;
  const part = pixelParts[piece.lines[0]!.part];
  const chip = chips[piece.board];
  if (keepAliveMilliamps > limitMilliamps / 2) {
    const message = `Keeping ${keepAliveMilliamps} mA alive leaves too little of the limit of ${limitMilliamps} mA.`;
    const advice = `Choose at most ${Math.floor(limitMilliamps / 2)} mA, half the limit.`;
    findings.error('keep-alive-too-high', 'supply.keepAliveMilliamps', message, advice);
  }
  const runs = piece.lines.flatMap((line) => line.runs);
  const pixels = runs.reduce((sum, run) => sum + pixelCount(run.flat) - new Set(run.removed).size, 0);
  const idleTenths = chip.currentTenths + pixels * part.quiescentTenths;
  if (idleTenths >= limitMilliamps * 10) {
    const message = `Chip and dark pixels alone draw ${idleTenths / 10} mA, so the limit leaves no light.`;
    findings.warning(
      'limit-too-low',
      'supply.limitMilliamps',
      message,
      'Use fewer pixels or a stronger supply.',
    );
  }
  if (volts > part.supplyVolts[1]) {
    const message = `The pixels stand at most ${part.supplyVolts[1]} V, and ${volts} V would destroy them.`;
    findings.warning(
      'volts-too-high',
      'supply.volts',
      message,
      'Put a converter in between and write its output.',
    );
  } else if (chip.supplyVolts !== null && chip.logicHighVolts !== null && volts < chip.supplyVolts[0]) {
    const message = `The ${chip.title} needs ${chip.supplyVolts[0]} V or more, and has ${volts} V.`;
    findings.warning('volts-too-low', 'supply.volts', message, 'Choose a supply of 5 V.');
  }
}
