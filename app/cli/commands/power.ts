import type { Score } from '../../../engine/look/score.ts';
import { type PowerReport, reportPower } from '../../../engine/power/report.ts';
import { columns, milliamps } from '../columns.ts';
import { open } from '../files.ts';
import { readWords, someFiles } from '../options.ts';
import { printJson } from '../tell.ts';
import { type Command, exitCodes } from '../terminal.ts';

interface Weighed {
  readonly file: string;
  readonly score: Score;
  readonly report: PowerReport;
}

/** Said with every table: it is read before somebody buys a cell and solders it in. */
const caution =
  'These figures are computed. Measure the finished piece, fuse its supply near the cells, and use\n' +
  'protected lithium cells only; local codes and licensed practice come first.\n';

export const power: Command = {
  usage: 'FILE... [--json]',
  does: 'tells what each look draws, pieces side by side',
  options: [],
  async run(words, terminal) {
    const { options, rest } = readWords(words, {});
    const weighed: Weighed[] = [];
    for (const file of someFiles(rest)) {
      const { score } = await open(file, terminal);
      weighed.push({ file, score, report: reportPower(score) });
    }
    if (options.json) printJson(terminal, { pieces: weighed.map(told) });
    else terminal.print([table(weighed), ...weighed.map(warningsText), caution].join('\n'));
    return exitCodes.fine;
  },
};

function told({ file, score, report }: Weighed): unknown {
  const { looks, runtimeHours, warnings } = report;
  return {
    file,
    name: score.piece.name,
    looks: looks.map(({ limitedShare, ...figures }) => figures),
    runtimeHours,
    warnings,
  };
}

function table(weighed: readonly Weighed[]): string {
  const head = ['piece', 'look', 'average', 'peak', 'lowest 10 s', 'energy a loop'];
  const rows = weighed.flatMap(({ score, report }) =>
    report.looks.map((look, index) => [
      index === 0 ? score.piece.name : '',
      look.name,
      `${milliamps(look.averageMilliamps)} mA`,
      `${milliamps(look.peakMilliamps)} mA`,
      `${milliamps(look.lowestTenSecondMilliamps)} mA`,
      `${look.energyPerLoopMilliwattHours.toFixed(2)} mWh`,
    ]),
  );
  return columns([head, ...rows], ['left', 'left', 'right', 'right', 'right', 'right']);
}

function warningsText({ score, report }: Weighed): string {
  return report.warnings
    .map(({ message, advice }) => `${score.piece.name}: ${message}\n  ${advice}\n`)
    .join('');
}
