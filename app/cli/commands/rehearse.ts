import type { RehearsalReport } from '../../../codegen/rehearse/report.ts';
import { printEvents } from '../../../engine/controls/press.ts';
import { columns } from '../columns.ts';
import { faulty, wrongUsage } from '../failure.ts';
import { filed, open } from '../files.ts';
import { chipNamed, oneFile, readWords, wholeNumber } from '../options.ts';
import { diagnosticsText, printJson } from '../tell.ts';
import { type Command, exitCodes } from '../terminal.ts';

/** An hour on the emulated chip takes many minutes already. */
const longestMs = 3_600_000;

export const rehearse: Command = {
  usage: 'FILE [--board B] [--for MS] [--press MS:LENGTH,...] [--json]',
  does: 'runs the sketch on an emulated chip and compares every frame',
  options: [
    ['--board B', 'another chip than that of the piece'],
    ['--for MS', 'emulated time, 10000 if left out'],
    ['--press MS:LENGTH,...', 'presses of the first button, with contact bounce'],
  ],
  async run(words, terminal) {
    const { rehearse: runRehearsal } = await import('../../../codegen/rehearse/rehearse.ts');
    const { rehearsalFaults } = await import('../../../codegen/rehearse/report.ts');
    const { options, rest } = readWords(words, { board: 'text', for: 'text', press: 'text' });
    const file = oneFile(rest);
    const chosen = options.board === undefined ? undefined : chipNamed(options.board);
    const forMilliseconds = wholeNumber(options.for ?? '10000', 'for', 1, longestMs);
    const presses = options.press === undefined ? [] : options.press.split(',').map(pressOf);
    const { score } = await open(file, terminal, chosen);
    if (presses.length > 0 && score.piece.controls.buttons.length === 0) {
      throw wrongUsage('no-button', 'The piece has no button to press.', 'Leave --press out.');
    }
    const { value: report, diagnostics } = await runRehearsal(score, {
      board: score.piece.board,
      forMilliseconds,
      presses,
    });
    if (report === undefined) throw faulty(filed(file, diagnostics));
    const faults = filed(file, rehearsalFaults(report));
    if (options.json) printJson(terminal, report);
    else terminal.print([summary(report), printEvents(report.trace), diagnosticsText(faults)].join('\n'));
    return faults.length > 0 ? exitCodes.faulty : exitCodes.fine;
  },
};

function pressOf(text: string): { atMilliseconds: number; lengthMilliseconds: number } {
  const [at = '', length = ''] = text.split(':');
  return {
    atMilliseconds: wholeNumber(at, 'press', 0, longestMs),
    lengthMilliseconds: wholeNumber(length, 'press', 1, longestMs),
  };
}

function summary(report: RehearsalReport): string {
  const { pulses } = report;
  const rows = [
    ['board', report.board],
    ['frames', `${report.frames}, of which ${report.mismatches} differ`],
    ...(['t0h', 't0l', 't1h', 't1l'] as const).map((kind) => [
      kind.toUpperCase(),
      pulses[kind] === null ? 'none' : `${pulses[kind].map((ns) => ns.toFixed(0)).join(' to ')} ns`,
    ]),
    ['clock', `off by ${report.clockErrorPercent.toFixed(3)} %`],
    ['pace', `${report.framesPerSecond.toFixed(1)} frames a second`],
    ['', `${report.cyclesPerPixel.toFixed(0)} cycles a pixel`],
    [
      'memory',
      `${report.flashBytes} bytes of flash, ${report.ramBytes} of RAM, ${report.stackBytes} of stack`,
    ],
  ];
  return columns(rows, ['left', 'left']);
}
