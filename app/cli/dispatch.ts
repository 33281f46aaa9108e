/** Finds the command and sees to it that every ending has its exit code. */
import { meantInstead } from '../../engine/piece/nearest.ts';
import { columns } from './columns.ts';
import { commands } from './commands/commands.ts';
import { Failure, wrongUsage } from './failure.ts';
import { diagnosticsText, printJson } from './tell.ts';
import { type Command, type ExitCode, exitCodes, type Terminal } from './terminal.ts';

const call = 'npm run -s weftlight --';

/** Runs `COMMAND WORDS...`. */
export async function dispatch(line: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const [name, ...words] = line;
  const asksForHelp = line.includes('--help') || name === 'help';
  try {
    const command = name === undefined ? undefined : commands[name];
    if (asksForHelp) {
      terminal.print(command === undefined ? overview() : usageOf(name!, command));
      return exitCodes.fine;
    }
    if (name === undefined) {
      terminal.complain(overview());
      return exitCodes.wrongUsage;
    }
    if (command === undefined) {
      const advice = meantInstead(name, Object.keys(commands));
      throw wrongUsage('unknown-command', `There is no command "${name}".`, advice);
    }
    return await command.run(words, terminal);
  } catch (problem) {
    if (!(problem instanceof Failure)) throw problem;
    if (line.includes('--json')) printJson(terminal, { diagnostics: problem.diagnostics });
    else terminal.complain(diagnosticsText(problem.diagnostics));
    return problem.exitCode;
  }
}

function overview(): string {
  const rows = Object.entries(commands).map(([name, { does }]) => [`  ${name}`, does]);
  return [
    `Usage: ${call} COMMAND ...\n\n`,
    columns(rows, ['left', 'left']),
    '\n--json prints one JSON value. COMMAND --help tells more.\n',
  ].join('');
}

function usageOf(name: string, { usage, does, options }: Command): string {
  const rows = options.map(([option, meaning]) => [`  ${option}`, meaning]);
  const told = rows.length > 0 ? `\n${columns(rows, ['left', 'left'])}` : '';
  return `Usage: ${call} ${name} ${usage}\n\n${does}\n${told}`;
}
