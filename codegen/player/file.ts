/** The whole file, in the order in which somebody reads it. */
import { printFigures, printGamma } from './figures.ts';
import { type IdentityFacts, printIdentity } from './identity.ts';
import { printButtonTable, printLookSwitch, printLookTable } from './looks.ts';
import { printMyCode } from './my-code.ts';
import { part } from './parts.ts';
import type { ClipFunction, Plan } from './plan.ts';
import { printSettings } from './settings.ts';
import { rows, rule, stringLiteral } from './text.ts';

/** @param myCode lines that the maker wrote into an older sketch */
export function printFile(plan: Plan, facts: IdentityFacts, myCode: string): string {
  return join([
    printIdentity(plan, facts),
    printPreamble(plan),
    printProgramText(plan, myCode),
    plan.chip === 'host' ? 'int main(int argc, char **argv) {\n  return run(argc - 1, argv + 1);\n}\n' : '',
  ]);
}

/** Headers and macros: what a file needs once, however many pieces it holds. */
export function printPreamble({ chip, driver, features }: Plan): string {
  const headers = [
    'stdint.h',
    ...(chip === 'host' ? ['stdio.h', 'string.h'] : ['avr/pgmspace.h']),
    ...driver.includes,
  ];
  return join([
    ...(chip === 'host' ? [] : [part('guardAvr', features)]),
    `${headers.map((header) => `#include <${header}>`).join('\n')}\n`,
    part(chip === 'host' ? 'preambleHost' : 'preambleAvr', features),
  ]);
}

/** Names that a script of the desk may speak of. */
function printDeskNames({ score: { piece } }: Plan): string {
  const list = (name: string, names: readonly string[]) =>
    `static const char *const ${name}[] = {\n${rows(names.map(stringLiteral), 1)}\n};\n`;
  return join([
    list(
      'LOOK_NAMES',
      piece.looks.map((look) => look.name),
    ),
    list('BUTTON_NAMES', [...piece.controls.buttons.map((button) => button.name), '']),
  ]);
}

/** Everything else; it may stand inside a namespace. */
export function printProgramText(plan: Plan, myCode: string): string {
  const { features, chip, functions, lookNames } = plan;
  const forMakers = [
    rule('SETTINGS: change what you like'),
    printSettings(plan),
    rule('LOOKS AND BUTTONS: change lengths, times and what a button does'),
    printLookTable(plan),
    printButtonTable(plan),
    rule('TYPES: leave them; they have to stand before the first function'),
    part('types', features),
    functions.map(({ name }) => `static void ${name}(const Passage &clip);`).join('\n'),
    rule('LOOKS: what is on, and when'),
    printLookSwitch(plan),
    ...(chip === 'host' ? [] : [rule('MY CODE: yours'), printMyCode(myCode, lookNames[0]!)]),
  ];
  return join([...forMakers, rule('MACHINERY BELOW: leave it'), ...printMachinery(plan)]);
}

/** In the order of use: nothing here stands before what it calls. */
function printMachinery(plan: Plan): string[] {
  const { features, chip, functions, driver, tables } = plan;
  const host = chip === 'host';
  const clips = features.clips === true;
  return [
    printFigures(plan),
    host
      ? `${part('desk', features)}\n${printDeskNames(plan)}`
      : `${rule('Pixels: the one door through which data leaves')}\n${driver.text}`,
    part('state', features),
    ...(features.buttons ? [part('buttons', features)] : []),
    part('clock', features),
    ...(clips || features.dissolve ? [part('blend', features)] : []),
    ...(clips ? [part('zones', features), part('clips', features), rule('Tables'), tables.text()] : []),
    ...(features.keyed ? [part('keyframes', features)] : []),
    ...(clips ? [rule('Patterns')] : []),
    plan.helperText,
    ...functions.map(printFunction),
    rule('Output: from levels to what the pixels are sent, in place'),
    printGamma(plan),
    part('output', features),
    part('frame', features),
    part(host ? 'hostMain' : 'chipMain', features),
  ];
}

function printFunction({ name, comment, body }: ClipFunction): string {
  return `${comment.join('\n')}\nstatic void ${name}(const Passage &clip) ${body}\n`;
}

/** Sections with one empty line between them. */
function join(sections: readonly string[]): string {
  return `${sections
    .map((section) => section.trim())
    .filter((section) => section !== '')
    .join('\n\n')}\n`;
}
