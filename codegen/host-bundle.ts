/** Many pieces in one program for the desk, each in a namespace: to compare thousands of frames quickly. */
import type { Score } from '../engine/look/score.ts';
import { driverFor } from './drivers/driver.ts';
import { printPreamble, printProgramText } from './player/file.ts';
import { planSketch } from './player/plan.ts';

/**
 * C++ whose program does for piece number PIECE what the program of a single piece does:
 * `PROG PIECE frames ...`, `PROG PIECE play ...`. Beside that, `PROG moments` reads lines of whole numbers
 * `PIECE LOOK MS BRIGHTNESS BLACKOUT LEAVING_LOOK LEAVING_MS LEAVING_MIX` (LEAVING_LOOK 255: none) and
 * prints the drive of each, in wire order, as a line of hexadecimal digits.
 */
export function printHostBundle(scores: readonly Score[]): string {
  const plans = scores.map((score) => {
    const line = score.piece.lines[0]!;
    const driver = driverFor('host', line.part, [line.pin])!;
    return planSketch({ score, chip: 'host', driver, bundled: true });
  });
  const features = { eased: true, clips: true };
  return [
    printPreamble({ ...plans[0]!, features }),
    '#include <stdlib.h>\n',
    ...plans.map((plan, index) => `namespace piece_${index} {\n\n${printProgramText(plan, '')}\n}\n`),
    `typedef int Run(int argc, char **argv);
typedef bool ShowLine(const char *numbers);
static Run *const RUNS[] = {${plans.map((_, index) => `piece_${index}::run`).join(', ')}};
static ShowLine *const SHOW_LINES[] = {${plans.map((_, index) => `piece_${index}::show_line`).join(', ')}};

int main(int argc, char **argv) {
  if (argc == 2 && strcmp(argv[1], "moments") == 0) {
    char line[128];
    while (fgets(line, sizeof line, stdin) != nullptr) {
      char *rest = nullptr;
      const unsigned long piece = strtoul(line, &rest, 10);
      if (piece >= ${plans.length} || !SHOW_LINES[piece](rest)) return 2;
    }
    return 0;
  }
  const unsigned long piece = argc >= 2 ? strtoul(argv[1], nullptr, 10) : ${plans.length};
  return piece < ${plans.length} ? RUNS[piece](argc - 2, argv + 2) : 2;
}
`,
  ].join('\n');
}
