/** What generated patterns are made of: types, names in sight, functions to call, and text that knows how tightly it binds. */
export type Type = 'float' | 'vec2' | 'vec3' | 'int' | 'bool';
export const types: readonly Type[] = ['float', 'float', 'float', 'vec2', 'vec3', 'int', 'bool'];
export const realTypes: readonly Type[] = ['float', 'vec2', 'vec3'];
export const sizes: Record<Type, number> = { float: 1, vec2: 2, vec3: 3, int: 1, bool: 1 };

/** An expression with how tightly it binds, so that brackets stand only where the grammar needs them. */
export interface Text {
  readonly text: string;
  readonly binds: number;
}

export const binding = {
  choice: 1,
  or: 2,
  xor: 3,
  and: 4,
  equal: 5,
  compare: 6,
  sum: 7,
  product: 8,
  unary: 9,
  atom: 10,
};

export interface Name {
  readonly text: string;
  readonly type: Type;
  readonly writable: boolean;
  readonly constant: boolean;
}

export interface Signature {
  readonly name: string;
  readonly takes: readonly Type[];
  readonly gives: Type;
}

export const given: readonly (readonly [string, Type])[] = [
  ['along', 'float'],
  ['place', 'vec2'],
  ['pixel', 'int'],
  ['count', 'int'],
  ['time', 'float'],
  ['turn', 'float'],
  ['seed', 'int'],
];

export const words = ['reed', 'oar', 'lantern', 'quay', 'eddy', 'ferry', 'moth', 'wick'];
export const one = [
  ...['abs', 'sign', 'floor', 'ceil', 'fract', 'sqrt', 'inversesqrt', 'sin', 'cos', 'atan', 'exp2', 'log2'],
  ...['radians', 'degrees', 'normalize'],
];
export const two = ['mod', 'min', 'max', 'step', 'pow'];
export const three = ['clamp', 'mix', 'smoothstep'];
export const constructions: Record<'vec2' | 'vec3', readonly (readonly Type[])[]> = {
  vec2: [
    ['float'],
    ['float', 'float'],
    ['vec3'],
    ['int', 'float'],
    ['float', 'vec2'],
    ['bool', 'int'],
    ['int'],
  ],
  vec3: [
    ...([['float'], ['float', 'float', 'float'], ['vec2', 'float'], ['float', 'vec2'], ['vec3']] as const),
    ...([['vec2', 'vec2'], ['int', 'bool', 'float'], ['vec2', 'vec3'], ['bool']] as const),
  ],
};

export const atom = (text: string): Text => ({ text, binds: binding.atom });
export const at = (binds: number, inner: Text) => (inner.binds >= binds ? inner.text : `(${inner.text})`);
/** Left associative: what stands on the right must bind tighter. */
export const infix = (binds: number, sign: string, a: Text, b: Text): Text => ({
  text: `${at(binds, a)} ${sign} ${at(binds + 1, b)}`,
  binds,
});
/** Two minus signs in a row would read as one `--`. */
export const prefix = (sign: string, a: Text): Text => {
  const inner = at(binding.unary, a);
  return { text: /^[+-]/.test(inner) ? `${sign}(${inner})` : `${sign}${inner}`, binds: binding.unary };
};
