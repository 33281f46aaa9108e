/** The other side: the same programs printed as C++, built with -O2, timed inside of the built program. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { printKernels } from '../../codegen/kernels/kernels.ts';
import { Names } from '../../codegen/names.ts';
import { part } from '../../codegen/player/parts.ts';
import { Tables } from '../../codegen/player/tables.ts';
import { printProgram } from '../../codegen/print/program.ts';
import { type Case, framesOf, moments } from './cases.ts';
import type { Measured } from './preview.ts';

export class NativeBench {
  private readonly program: string;
  private readonly numbers: ReadonlyMap<Case, number>;

  constructor(cases: readonly Case[], folder: string) {
    this.numbers = new Map(cases.map((one, number) => [one, number]));
    const source = join(folder, 'bench.cpp');
    this.program = join(folder, 'bench');
    writeFileSync(source, printBench(cases));
    run('g++', ['-std=c++11', '-O2', source, '-o', this.program]);
  }

  measure(one: Case): Measured {
    const output = run(this.program, [String(this.numbers.get(one)), String(framesOf(one))]);
    const [nanoseconds, lastFrame = ''] = output.trim().split(' ');
    return { nanosecondsPerPixel: Number(nanoseconds), lastFrame };
  }
}

function run(command: string, programArguments: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(command, programArguments, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} ended with ${status}: ${stderr?.slice(0, 2000)}`);
  return stdout;
}

function printBench(cases: readonly Case[]): string {
  return `#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <chrono>
${part('preambleHost', { clips: true, eased: true })}
typedef void Draw(uint8_t *out, const uint16_t *indices, const int16_t *places, uint16_t count, int32_t time, int16_t turn);
${cases.map(printCase).join('\n')}
struct Case {
  Draw *draw;
  uint16_t count;
  const uint16_t *indices;
  const int16_t *places;
};
static const Case CASES[] = {
${cases.map(({ pixels }, number) => `  {case_${number}::draw, ${pixels}, case_${number}::INDICES, case_${number}::PLACES},`).join('\n')}
};
static const int32_t TIMES[] = {${moments.map(({ time }) => time).join(', ')}};
static const int16_t TURNS[] = {${moments.map(({ turn }) => turn).join(', ')}};

int main(int, char **argv) {
  const Case &one = CASES[atoi(argv[1])];
  const int frames = atoi(argv[2]);
  static uint8_t out[3 * ${Math.max(...cases.map(({ pixels }) => pixels))}];
  double best = 1e300;
  for (int round = 0; round < 3; round++) {
    const auto began = std::chrono::steady_clock::now();
    for (int frame = 0; frame < frames; frame++) {
      one.draw(out, one.indices, one.places, one.count, TIMES[frame], TURNS[frame]);
    }
    const std::chrono::duration<double, std::nano> took = std::chrono::steady_clock::now() - began;
    if (took.count() < best) best = took.count();
  }
  printf("%.4f ", best / ((double)frames * one.count));
  for (int at = 0; at < 3 * one.count; at++) printf("%02x", out[at]);
  printf("\\n");
  return 0;
}
`;
}

/** The printed statements inside of a loop like the preview's: same inputs, same outputs. */
function printCase({ program, indices, places }: Case, number: number): string {
  const tables = new Tables(new Names());
  const { frameStatements, pixelStatements, levels, kernels, uses } = printProgram(program, tables);
  const helpers = printKernels(kernels, 'host', tables);
  return `namespace case_${number} {
static const uint16_t INDICES[] = {${indices.join(', ')}};
static const int16_t PLACES[] = {${places.join(', ')}};
${tables.text()}
${helpers}
static void draw(uint8_t *out, const uint16_t *indices, const int16_t *places, uint16_t count, int32_t time, int16_t turn) {
  (void)indices, (void)places, (void)time, (void)turn;
${frameStatements.join('\n')}
  for (uint16_t at = 0; at < count; at++) {
    ${uses.index ? 'const uint16_t index = indices[at];' : ''}
    ${uses.placeX ? 'const int16_t place_x = places[2 * at];' : ''}
    ${uses.placeY ? 'const int16_t place_y = places[2 * at + 1];' : ''}
${pixelStatements.join('\n')}
    out[3 * at] = ${levels[0]};
    out[3 * at + 1] = ${levels[1]};
    out[3 * at + 2] = ${levels[2]};
  }
}
}
`;
}
