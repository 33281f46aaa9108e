/** A clip's program as C++ statements: once a frame, and for every pixel. The player puts the loop around them. */
import type { InputName, Node } from '../../engine/pattern/ir.ts';
import { inOrder } from '../../engine/pattern/ir.ts';
import type { ClipProgram } from '../../engine/pattern/program.ts';
import { schedule } from '../../engine/pattern/schedule.ts';
import { functionName, type HelperName } from '../kernels/kernels.ts';
import { atom, cppType, type Expression } from './expression.ts';
import { keyedNames } from './keyed-names.ts';
import { levelExpression } from './level.ts';
import { type Context, emitOperation } from './operations.ts';

/** What collects tables in flash: the player's `Tables`. */
export interface TableTaker {
  take(request: {
    readonly prefix: string;
    readonly name: string;
    readonly type: 'int16_t' | 'int32_t';
    readonly values: ArrayLike<number>;
    readonly comment: string;
  }): string;
}

export interface PrintedProgram {
  readonly frameStatements: readonly string[];
  readonly pixelStatements: readonly string[];
  /** uint8_t expressions: red, green, blue. */
  readonly levels: readonly [string, string, string];
  /** Helper functions that the statements call, by name; `printKernels` gives their text. */
  readonly kernels: readonly HelperName[];
  readonly uses: {
    readonly time: boolean;
    readonly turn: boolean;
    readonly index: boolean;
    readonly placeX: boolean;
    readonly placeY: boolean;
  };
}

/**
 * The statements read the locals `time`, `turn`, `index`, `place_x`, `place_y` where `uses` says so, and
 * those of `keyedNames` for each keyframed parameter. Their own locals begin with `v_`.
 */
export function printProgram(program: ClipProgram, tables: TableTaker): PrintedProgram {
  const kernels = new Set<HelperName>();
  const { frame, pixel } = schedule(program.levels, {
    nesting: 5,
    keep: (node) => program.names.has(node),
  });
  const names = new Map<Node, Expression>();
  const locals = new LocalNames();
  const keyed = keyedNames(program);
  const context: Context = {
    emit: (node) => names.get(node) ?? emitOperation(node, context),
    use: (helper) => {
      kernels.add(helper);
      return functionName(helper);
    },
    keyed: (slot) => keyed[slot]!,
    gradient: (number) => gradientTables(program, number, tables),
  };
  const declare = (node: Node): string => {
    const { text } = emitOperation(node, context);
    const name = locals.take(program.names.get(node));
    names.set(node, atom(name));
    return `const ${cppType[node.type]} ${name} = ${text};`;
  };
  const frameStatements = frame.map(declare);
  const pixelStatements = pixel.map(declare);
  const levels = program.levels.map((level) => levelExpression(level, context, names)) as [
    string,
    string,
    string,
  ];
  const inputs = new Set(
    inOrder(program.levels).flatMap((node) => (node.op === 'input' ? [node.input] : [])),
  );
  const uses = (name: InputName) => inputs.has(name);
  return {
    frameStatements,
    pixelStatements,
    levels,
    kernels: [...kernels],
    uses: {
      time: uses('time'),
      turn: uses('turn'),
      index: uses('index'),
      placeX: uses('placeX'),
      placeY: uses('placeY'),
    },
  };
}

/**
 * Names of locals: the author's own where there are some, behind a prefix that no macro of a sketch core
 * and no word of C++ has.
 */
class LocalNames {
  private readonly taken = new Set<string>();

  take(hint: string | undefined): string {
    const base = hint === undefined ? 'v' : `v_${hint}`;
    let name = hint === undefined ? 'v_1' : base;
    for (let number = 2; this.taken.has(name); number++) name = `${base}_${number}`;
    this.taken.add(name);
    return name;
  }
}

function gradientTables({ gradients }: ClipProgram, number: number, tables: TableTaker) {
  const { name, position, inverse, colour } = gradients[number]!;
  const table = (type: 'int16_t' | 'int32_t', prefix: string, values: ArrayLike<number>, comment: string) =>
    tables.take({ prefix, name, type, values, comment });
  return {
    position: table('int16_t', 'stops', position, `Where the colours of gradient ${name} stand, 0 to 16384.`),
    inverse: table('int32_t', 'widths', inverse, 'One over the distance of neighbouring stops, in 1/65536.'),
    colour: table('int16_t', 'colours', colour, `Red, green and blue at each stop of ${name}, 0 to 16384.`),
    segments: inverse.length,
  };
}
