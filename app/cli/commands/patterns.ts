import { type LibraryPattern, libraryPatterns } from '../../../engine/pattern/library.ts';
import { fragmentShader } from '../../../engine/pattern/prelude.ts';
import type { ParameterDescription } from '../../../engine/piece/schema.ts';
import { columns } from '../columns.ts';
import { wrongUsage } from '../failure.ts';
import { indexNamed, readWords } from '../options.ts';
import { printJson } from '../tell.ts';
import { type Command, exitCodes } from '../terminal.ts';

export const patterns: Command = {
  usage: '[--json] [--glsl NAME]',
  does: 'lists the library of patterns and their parameters',
  options: [['--glsl NAME', 'prints a pattern as one complete GLSL ES 3.00 fragment shader']],
  async run(words, terminal) {
    const { options, rest } = readWords(words, { glsl: 'text' });
    if (rest.length > 0) throw wrongUsage('file-unexpected', 'The library needs no file.', 'Leave it out.');
    const library = libraryPatterns.map((pattern) => ({ ...pattern, name: fullName(pattern) }));
    if (options.glsl !== undefined) {
      const shader = fragmentShader(library[indexNamed('pattern', options.glsl, library)]!);
      if (options.json) printJson(terminal, { name: options.glsl, glsl: shader });
      else terminal.print(shader);
    } else if (options.json) {
      printJson(terminal, library);
    } else {
      terminal.print(library.map(describe).join('\n'));
    }
    return exitCodes.fine;
  },
};

/** As a clip names it: `NAME/REVISION`. */
function fullName({ name, revision }: LibraryPattern): string {
  return `${name}/${revision}`;
}

function describe({ name, title, sees, parameters }: LibraryPattern): string {
  const rows = parameters.map((parameter) => [`  ${parameter.name}`, parameter.kind, rangeText(parameter)]);
  return `${name}  ${title}\n  ${sees}\n${columns(rows, ['left', 'left', 'left'])}`;
}

function rangeText(parameter: ParameterDescription): string {
  const { default: usual } = parameter;
  if (parameter.kind === 'gradient') return parameter.default.map(({ colour }) => colour).join(' ');
  if (!('min' in parameter)) return String(usual);
  const unit = parameter.unit === undefined ? '' : ` ${parameter.unit}`;
  return `${parameter.min} to ${parameter.max}${unit}, ${usual} if left out`;
}
