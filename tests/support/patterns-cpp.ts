/** Single operations and whole patterns as C++: one function a case, for this computer or for the chip. */
import { functionName, type HelperName, printKernels } from '../../codegen/kernels/kernels.ts';
import { atom, cppType } from '../../codegen/print/expression.ts';
import { type Context, emitOperation } from '../../codegen/print/operations.ts';
import { printProgram, type TableTaker } from '../../codegen/print/program.ts';
import type { ClipProgram } from '../../engine/pattern/program.ts';
import type { OperationCase } from './patterns-cases.ts';

const argumentNames = ['a', 'b', 'c'] as const;

export interface PrintedCases {
  /** Tables, helper functions, and `static int32_t case_N(const int32_t *v)` for each. */
  readonly text: string;
  readonly functions: readonly string[];
}

/** 32 bits carry every argument and every result: the reader knows the type. */
export function printCases(cases: readonly OperationCase[], chip: 'host' | 'atmega328p'): PrintedCases {
  const kernels = new Set<HelperName>();
  const functions = cases.map((one, number) => printCase(one, number, kernels));
  const tables = new TableTexts();
  const helpers = printKernels(kernels, chip, tables);
  return {
    text: [tables.text(), helpers, ...functions].join('\n'),
    functions: cases.map((_, number) => `case_${number}`),
  };
}

function printCase(one: OperationCase, number: number, kernels: Set<HelperName>): string {
  const names = new Map(
    one.leaves.flatMap((leaf, i) => (leaf === undefined ? [] : [[leaf, argumentNames[i]!] as const])),
  );
  const used = new Set<string>();
  const context: Context = {
    emit: (node) => {
      const name = names.get(node);
      if (name === undefined) return emitOperation(node, context);
      used.add(name);
      return atom(name);
    },
    use: (helper) => {
      kernels.add(helper);
      return functionName(helper);
    },
    keyed: (slot) => argumentNames[slot]!,
    gradient: () => {
      throw new Error('a case of one operation reads no gradient');
    },
  };
  const { text } = context.emit(one.node);
  const reads = one.leaves.flatMap((leaf, i) => {
    const name = argumentNames[i]!;
    if (leaf === undefined || !used.has(name)) return [];
    const type = cppType[leaf.type];
    return [`  const ${type} ${name} = ${leaf.type === 'bool' ? `v[${i}] != 0` : `(${type})v[${i}]`};`];
  });
  return [
    `// ${one.name}`,
    `static int32_t case_${number}(const int32_t *v) {`,
    ...(reads.length === 0 ? ['  (void)v;'] : reads),
    `  const ${cppType[one.node.type]} result = ${text};`,
    '  return (int32_t)result;',
    '}',
  ].join('\n');
}

/** Tables as the sketch prints them, with nothing around; each content once. */
export class TableTexts implements TableTaker {
  private readonly identifiers = new Map<string, string>();
  private readonly lines: string[] = [];

  take({ prefix, name, type, values }: Parameters<TableTaker['take']>[0]): string {
    const entries = Array.from(values, String).join(', ');
    const content = `${prefix} ${type} ${entries}`;
    const known = this.identifiers.get(content);
    if (known !== undefined) return known;
    const identifier = `${prefix}_${name}_${this.identifiers.size}`;
    this.identifiers.set(content, identifier);
    this.lines.push(`static const ${type} ${identifier}[] IN_FLASH = {${entries}};`);
    return identifier;
  }

  text(): string {
    return this.lines.join('\n');
  }
}

/** Whole programs of clips, one function each, that write three levels to `out`. */
export function printPrograms(programs: readonly ClipProgram[], chip: 'host' | 'atmega328p'): PrintedCases {
  const tables = new TableTexts();
  const kernels = new Set<HelperName>();
  const functions = programs.map((program, number) => {
    const printed = printProgram(program, tables);
    for (const kernel of printed.kernels) kernels.add(kernel);
    const { levels } = printed;
    return [
      `static int32_t case_${number}(const int32_t *v) {`,
      '  const int32_t time = v[0];',
      '  const int16_t turn = (int16_t)v[1];',
      '  const uint16_t index = (uint16_t)v[2];',
      '  const int16_t place_x = (int16_t)v[3];',
      '  const int16_t place_y = (int16_t)v[4];',
      '  (void)time, (void)turn, (void)index, (void)place_x, (void)place_y;',
      ...[...printed.frameStatements, ...printed.pixelStatements].map((line) => `  ${line}`),
      `  const uint8_t red = ${levels[0]}, green = ${levels[1]}, blue = ${levels[2]};`,
      '  return (int32_t)((uint32_t)red << 16 | (uint16_t)(green << 8) | blue);',
      '}',
    ].join('\n');
  });
  const helpers = printKernels(kernels, chip, tables);
  return {
    text: [tables.text(), helpers, ...functions].join('\n'),
    functions: programs.map((_, number) => `case_${number}`),
  };
}

/** Reads lines of a case and five arguments, and answers each with its result. */
export function hostProgramText({ text, functions }: PrintedCases): string {
  return `#include <stdint.h>
#include <stdio.h>
#define IN_FLASH
#define READ_8(entry) (entry)
#define READ_16(entry) (entry)
#define READ_32(entry) (entry)
${text}
typedef int32_t (*Case)(const int32_t *);
static const Case cases[] = {${functions.join(', ')}};
int main() {
  int number;
  int32_t v[5];
  while (scanf("%d %d %d %d %d %d", &number, &v[0], &v[1], &v[2], &v[3], &v[4]) == 6)
    printf("%d\\n", cases[number](v));
}
`;
}

/**
 * Waits for ever for a request; whoever steps the chip fills \`which\` and \`values\`, and finds the result
 * when \`answered\` is written.
 */
export function chipProgramText({ text, functions }: PrintedCases): string {
  return `#include <stdint.h>
#include <avr/pgmspace.h>
#define IN_FLASH PROGMEM
#define READ_8(entry) pgm_read_byte(&(entry))
#define READ_16(entry) pgm_read_word(&(entry))
#define READ_32(entry) pgm_read_dword(&(entry))
${text}
typedef int32_t (*Case)(const int32_t *);
static const Case cases[] PROGMEM = {${functions.join(', ')}};
uint16_t which;
int32_t values[5];
int32_t result;
volatile uint8_t answered;
void setup() { answered = 0; }
void loop() {
  asm volatile("" ::: "memory");
  result = reinterpret_cast<Case>(pgm_read_word(&cases[which]))(values);
  asm volatile("" ::: "memory");
  answered = 1;
}
`;
}
