/** Parameters of the library's patterns, until `engine/pattern/library.ts` tells them. */
import type { ParameterDescription } from '../schema.ts';

const number = (name: string, min: number, max: number, usual: number): ParameterDescription => ({
  kind: 'number',
  name,
  label: name,
  min,
  max,
  default: usual,
});
const whole = (name: string, min: number, max: number, usual: number): ParameterDescription => ({
  kind: 'whole',
  name,
  label: name,
  min,
  max,
  default: usual,
});
const yesNo = (name: string): ParameterDescription => ({ kind: 'yes-no', name, label: name, default: false });
const colour = (name: string): ParameterDescription => ({
  kind: 'colour',
  name,
  label: name,
  default: '#ffffff',
});
const gradient = (name: string): ParameterDescription => ({
  kind: 'gradient',
  name,
  label: name,
  default: [{ at: 0, colour: '#ffffff' }],
});

export const libraryPatterns: readonly {
  name: string;
  revision: number;
  parameters: readonly ParameterDescription[];
}[] = [
  { name: 'still', revision: 1, parameters: [colour('tint')] },
  {
    name: 'sleeper',
    revision: 1,
    parameters: [colour('tint'), number('period', 1, 20, 5), number('lowest', 0, 1, 0.1)],
  },
  {
    name: 'ribbon',
    revision: 1,
    parameters: [gradient('ribbon'), number('repeats', 0.25, 8, 1), number('shift', 0, 1, 0)],
  },
  {
    name: 'millrace',
    revision: 1,
    parameters: [
      gradient('water'),
      number('period', 0.5, 30, 4),
      number('repeats', 0.25, 8, 1),
      yesNo('backwards'),
    ],
  },
  {
    name: 'windrose',
    revision: 1,
    parameters: [whole('petals', 1, 6, 1), number('period', 1, 60, 12), number('richness', 0, 1, 1)],
  },
  {
    name: 'wake',
    revision: 1,
    parameters: [
      colour('bow'),
      colour('water'),
      number('period', 0.5, 20, 3),
      number('tail', 0.05, 1, 0.4),
      yesNo('backwards'),
    ],
  },
  {
    name: 'procession',
    revision: 1,
    parameters: [
      colour('lantern'),
      colour('night'),
      whole('lit', 1, 16, 2),
      whole('gap', 1, 16, 4),
      number('step', 0.02, 2, 0.12),
    ],
  },
  {
    name: 'tide',
    revision: 1,
    parameters: [colour('over'), colour('under'), number('softness', 0, 0.5, 0.15), yesNo('backwards')],
  },
  {
    name: 'dew',
    revision: 1,
    parameters: [colour('drop'), number('share', 0.02, 1, 0.25), number('period', 0.2, 10, 1.5)],
  },
  {
    name: 'brazier',
    revision: 1,
    parameters: [gradient('heat'), number('pace', 0.2, 4, 1), number('reach', 0.2, 1, 0.7)],
  },
  {
    name: 'mist',
    revision: 1,
    parameters: [gradient('mist'), number('size', 0.5, 8, 2), number('pace', 0, 2, 0.2)],
  },
  {
    name: 'raindrop',
    revision: 1,
    parameters: [
      colour('ring'),
      colour('pool'),
      number('atX', -1, 1, 0),
      number('atY', -1, 1, 0),
      number('period', 0.5, 10, 2),
      number('spacing', 0.1, 2, 0.6),
    ],
  },
];
