import { hasErrors } from '../../../engine/diagnostic.ts';
import type { FiledDiagnostic } from '../failure.ts';
import { examine } from '../files.ts';
import { readWords, someFiles } from '../options.ts';
import { diagnosticsText, printJson } from '../tell.ts';
import { type Command, exitCodes } from '../terminal.ts';

export const check: Command = {
  usage: 'FILE... [--json]',
  does: 'tells everything that is wrong with a piece',
  options: [],
  async run(words, terminal) {
    const { options, rest } = readWords(words, {});
    const all: FiledDiagnostic[] = [];
    for (const file of someFiles(rest)) {
      const { diagnostics } = await examine(file, terminal);
      all.push(...diagnostics);
      if (!options.json) terminal.print(verdict(file, diagnostics));
    }
    if (options.json) printJson(terminal, { diagnostics: all });
    return hasErrors(all) ? exitCodes.faulty : exitCodes.fine;
  },
};

function verdict(file: string, diagnostics: readonly FiledDiagnostic[]): string {
  if (diagnostics.length === 0) return `${file}: fine\n`;
  const errors = diagnostics.filter(({ severity }) => severity === 'error').length;
  const count = [counted(errors, 'error'), counted(diagnostics.length - errors, 'warning')]
    .filter((text) => text !== '')
    .join(', ');
  return `${file}: ${count}\n\n${diagnosticsText(diagnostics)}\n`;
}

function counted(count: number, word: string): string {
  return count === 0 ? '' : `${count} ${word}${count === 1 ? '' : 's'}`;
}
