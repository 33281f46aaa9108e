/** One meaning, two executions: the generated JavaScript against the definition of the graph, bit for bit. */
import { describe, expect, test } from 'vitest';
import type { CompiledPattern } from '../../engine/pattern/compile.ts';
import { evaluate, type Inputs } from '../../engine/pattern/evaluate.ts';
import { inOrder, type Node, rates } from '../../engine/pattern/ir.ts';
import { compileProgram } from '../../engine/pattern/javascript.ts';
import { libraryPatterns, referenceOf } from '../../engine/pattern/library.ts';
import { specialise } from '../../engine/pattern/specialise.ts';
import { Chance } from '../support/generate/chance.ts';
import {
  compiled,
  drawer,
  evaluated,
  gradientsOf,
  inputsOf,
  lightOf,
  type PatternSource,
  programOf,
  randomMoment,
  randomSettings,
  randomZone,
  rawParameters,
  rawWithin,
  valuesOfNodes,
  zoneFields,
} from '../support/patterns.ts';
import { generatePattern } from '../support/patterns-generate.ts';

const library = libraryPatterns.map((pattern) => ({ name: referenceOf(pattern), ...compiledOnce(pattern) }));
const generated = Array.from({ length: 500 }, (_, seed) => ({
  name: `generated ${seed}`,
  ...compiledOnce(generatePattern(seed)),
}));
const all = [...library, ...generated];

function compiledOnce({ source, parameters }: PatternSource): { pattern: CompiledPattern } {
  return { pattern: compiled({ source, parameters }) };
}

/** Runs `check` for some clips of each pattern, each at some moments. */
function forClips(
  patterns: typeof all,
  clips: number,
  check: (name: string, pattern: CompiledPattern, chance: Chance) => void,
): void {
  for (const [seed, { name, pattern }] of patterns.entries()) {
    const chance = new Chance(seed);
    for (let clip = 0; clip < clips; clip++) check(`${name}, clip ${clip}`, pattern, chance);
  }
}

describe('F13 the generated JavaScript', () => {
  const compare = (patterns: typeof all, clips: number) => {
    const seen = new Set<number>();
    forClips(patterns, clips, (name, pattern, chance) => {
      const zone = randomZone(chance);
      const program = programOf(pattern, randomSettings(chance, pattern.parameters), zone);
      const draw = drawer(program);
      for (let i = 0; i < 8; i++) {
        const moment = randomMoment(chance, zone);
        const levels = draw(moment);
        expect(levels, `${name} at ${JSON.stringify({ zone, moment })}`).toEqual(
          evaluated(program, moment, zone),
        );
        for (const level of levels) seen.add(level);
      }
    });
    return seen;
  };

  test('draws every pattern of the library as the graph is defined', () => {
    expect(compare(library, 60).size).toBe(256);
  });

  test('draws 500 generated patterns as the graph is defined', () => {
    expect(compare(generated, 3).size).toBe(256);
  });

  test('draws keyframed parameters as the graph is defined', () => {
    let slots = 0;
    forClips(all, 1, (name, pattern, chance) => {
      const zone = randomZone(chance);
      const raws = rawParameters(pattern, {});
      slots += raws.length;
      const { levels, names } = specialise(
        pattern,
        raws.map((_, slot) => ({ keyedSlot: slot })),
        zoneFields(zone),
      );
      const gradients = gradientsOf(pattern, {});
      const draw = drawer({ levels, names, gradients, keyed: [] });
      const parameters = inOrder(pattern.levels).filter((node) => node.op === 'parameter');
      for (let i = 0; i < 4; i++) {
        const keyed = Int32Array.from(raws);
        for (const node of parameters) keyed[node.slot] = rawWithin(chance, node);
        const moment = randomMoment(chance, zone);
        const inputs = inputsOf(moment, zone, { gradients, keyed: (slot) => keyed[slot]! });
        expect(draw(moment, keyed), name).toEqual(evaluate(levels, inputs));
      }
    });
    expect(slots).toBeGreaterThan(500);
  });

  test('writes three levels for each entry of a zone, twins alike, and nothing else', () => {
    const { pattern } = library.find(({ name }) => name === 'wake/1')!;
    const program = programOf(pattern, {}, { count: 3, seed: 0 });
    const draw = compileProgram(program);
    const out = new Uint8Array(12);
    const places = Int16Array.from([1, 2, 3, 4, 5, 6, 7, 8]);
    draw(out, Uint16Array.of(2, 0, 2, 1), places, 70_000, 0, new Int32Array(0));
    expect([...out.slice(0, 3)]).toEqual([...out.slice(6, 9)]);
    expect([...out.slice(0, 3)]).not.toEqual([...out.slice(3, 6)]);
    const one = drawer(program);
    const at = (index: number) => one({ time: 70_000, turn: 0, index, placeX: 0, placeY: 0 });
    expect([...out]).toEqual([...at(2), ...at(0), ...at(2), ...at(1)]);
  });
});

/** Leaves whose value no proof may rely on beyond their bounds: any input, any hash, any colour. */
function freeLeaf(chance: Chance): (node: Node) => number | undefined {
  return (node) => {
    // The index alone is bound to something else: to the size of the zone.
    const isInput = node.op === 'input' && node.input !== 'index';
    const isHash = node.op === 'call' && (node.kernel === 'hash' || node.kernel === 'hash2');
    const isFree =
      isInput || isHash || node.op === 'keyed' || node.op === 'parameter' || node.op === 'gradientColour';
    // Right before and right after a whole second a fraction is at its ends.
    if (isInput && node.input === 'time' && chance.flip(0.3))
      return chance.whole(0, 32_399) * 65_536 + (chance.flip() ? 65_535 : chance.whole(0, 255));
    return isFree ? rawWithin(chance, node) : undefined;
  };
}

describe('F12 what is proved of a node', () => {
  const outside = (values: ReadonlyMap<Node, number>) =>
    [...values].filter(([{ min, max }, value]) => value < min || value > max).map(([node]) => node);

  test('its range holds, in the pattern and in the clip, whatever the leaves give', () => {
    forClips(all, 3, (name, pattern, chance) => {
      const zone = randomZone(chance);
      const settings = randomSettings(chance, pattern.parameters);
      const raws = rawParameters(pattern, settings);
      const gradients = gradientsOf(pattern, settings);
      const program = programOf(pattern, settings, zone);
      for (let i = 0; i < 4; i++) {
        const moment = randomMoment(chance, zone);
        const inputs = inputsOf(moment, zone, { gradients, parameter: (slot) => raws[slot]! });
        for (const levels of [pattern.levels, program.levels]) {
          expect(outside(valuesOfNodes(levels, inputs)), name).toEqual([]);
          expect(outside(valuesOfNodes(levels, inputs, freeLeaf(chance))), name).toEqual([]);
        }
      }
    });
  });

  test.each([
    // Each of these once had a range that was too narrow, by a step or two or by far.
    ['a sum with a number that 14 bits do not hold', 'vec3(fract(time) * 0.5 + 0.1)'],
    [
      'a mix by a factor that is rounded up',
      'mix(vec3(0.5), vec3(0.0, 3.456, 0.0), clamp(place.x, 0.0, 1.0))',
    ],
    ['a mix of two formats', 'vec3(mix(hash(pixel) * 0.33, turn, clamp(time, 0.0, 1.0)))'],
    ['a mix whose difference wraps', 'vec3(mix(time, turn * -16000.0, hash(pixel)))'],
    ['a mix along the zone, which falls short', 'vec3(mix(turn, 0.0, along))'],
    ['a soft step of a part of its way', 'vec3(smoothstep(0.0, 1.0, clamp(turn, 0.2857, 0.5714)))'],
    ['the size of the least number of all', 'vec3(abs(hash(pixel) < 0.5 ? -32768.0 : time))'],
  ])('%s', (_, colour) => {
    const pattern = compiled({ source: lightOf(colour), parameters: [] });
    const zone = { count: 2000, seed: 9 };
    const chance = new Chance(4);
    const free = freeLeaf(chance);
    for (let turn = 0; turn < 16_384; turn++) {
      const inputs = inputsOf({ ...randomMoment(chance, zone), turn }, zone);
      const values = valuesOfNodes(pattern.levels, inputs, (node) =>
        node.op === 'input' && node.input === 'turn' ? undefined : free(node),
      );
      expect(outside(values)).toEqual([]);
    }
  });

  test('its rate holds: no pixel changes what is said to change with the frame alone', () => {
    const counts = { constant: 0, frame: 0, pixel: 0 };
    forClips(all, 2, (name, pattern, chance) => {
      const zone = randomZone(chance);
      const program = programOf(pattern, randomSettings(chance, pattern.parameters), zone);
      const valuesAt = (moment: Parameters<typeof inputsOf>[0]) =>
        valuesOfNodes(program.levels, inputsOf(moment, zone, { gradients: program.gradients }));
      const here = randomMoment(chance, zone);
      const elsewhere = { ...randomMoment(chance, zone), time: here.time, turn: here.turn };
      const [first, second, third] = [here, elsewhere, randomMoment(chance, zone)].map(valuesAt);
      for (const [node, value] of first!) {
        counts[node.rate]++;
        if (node.rate !== 'pixel') expect(second!.get(node), `${name}: ${node.op}`).toBe(value);
        if (node.rate === 'constant') expect(third!.get(node), `${name}: ${node.op}`).toBe(value);
      }
    });
    for (const rate of rates) expect(counts[rate]).toBeGreaterThan(1000);
  });
});

describe('F7 specialising', () => {
  test('folding parameters, zone and seed changes no bits', () => {
    forClips(all, 3, (name, pattern, chance) => {
      const zone = randomZone(chance);
      const settings = randomSettings(chance, pattern.parameters);
      const program = programOf(pattern, settings, zone);
      const raws = rawParameters(pattern, settings);
      for (let i = 0; i < 4; i++) {
        const moment = randomMoment(chance, zone);
        const inputs: Inputs = inputsOf(moment, zone, {
          gradients: program.gradients,
          parameter: (slot) => raws[slot]!,
        });
        expect(evaluated(program, moment, zone), name).toEqual(evaluate(pattern.levels, inputs));
      }
    });
  });

  test('a parameter that is keyframed and one that stands still give the same bits', () => {
    forClips(all, 2, (name, pattern, chance) => {
      const zone = randomZone(chance);
      const settings = randomSettings(chance, pattern.parameters);
      const raws = rawParameters(pattern, settings);
      const { levels } = specialise(
        pattern,
        raws.map((raw, slot) => (chance.flip() ? { raw } : { keyedSlot: slot })),
        zoneFields(zone),
      );
      const program = programOf(pattern, settings, zone);
      for (let i = 0; i < 4; i++) {
        const moment = randomMoment(chance, zone);
        const inputs = inputsOf(moment, zone, { gradients: program.gradients, keyed: (slot) => raws[slot]! });
        expect(evaluate(levels, inputs), name).toEqual(evaluated(program, moment, zone));
      }
    });
  });

  /** Nodes that some slot can change. */
  function dependents(pattern: CompiledPattern, slot: number): Set<Node> {
    const found = new Set<Node>();
    for (const node of inOrder(pattern.levels)) {
      const isIt = node.op === 'parameter' && node.slot === slot;
      if (isIt || operandsHave(node, found)) found.add(node);
    }
    return found;
  }

  test('dragging one parameter changes nothing in what does not depend on it', () => {
    let dragged = 0;
    forClips(all, 1, (name, pattern, chance) => {
      const zone = randomZone(chance);
      const settings = randomSettings(chance, pattern.parameters);
      const raws = rawParameters(pattern, settings);
      for (const slot of raws.keys()) {
        const touched = dependents(pattern, slot);
        const others = inOrder(pattern.levels).filter((node) => !touched.has(node) && node.type !== 'bool');
        const parameter = [...touched].find((node) => node.op === 'parameter');
        if (parameter === undefined || others.length < 3) continue;
        const roots = [0, 1, 2].map(() => chance.pick(others)) as [Node, Node, Node];
        const drawnWith = (raw: number) => {
          const fillings = raws.map((one, i) => ({ raw: i === slot ? raw : one }));
          return specialise({ ...pattern, levels: roots }, fillings, zoneFields(zone)).levels;
        };
        const gradients = gradientsOf(pattern, settings);
        const moment = inputsOf(randomMoment(chance, zone), zone, { gradients });
        const before = evaluate(drawnWith(parameter.min), moment);
        for (const raw of [parameter.max, rawWithin(chance, parameter)]) {
          expect(evaluate(drawnWith(raw), moment), name).toEqual(before);
        }
        dragged++;
      }
    });
    expect(dragged).toBeGreaterThan(300);
  });

  test('formats follow from declared ranges, never from defaults', () => {
    for (const { name, pattern } of all) {
      const parameters = pattern.parameters.map((one) => {
        if (one.kind === 'number' || one.kind === 'whole') return { ...one, default: one.max };
        return one.kind === 'yes-no' ? { ...one, default: !one.default } : one;
      });
      const other = compiled({ source: pattern.source, parameters });
      expect(shapeOf(other.levels), name).toEqual(shapeOf(pattern.levels));
    }
  });
});

const operandsHave = (node: Node, found: ReadonlySet<Node>): boolean =>
  ('a' in node && found.has(node.a)) ||
  ('b' in node && found.has(node.b)) ||
  ('condition' in node && found.has(node.condition)) ||
  ('segment' in node && found.has(node.segment)) ||
  ('part' in node && found.has(node.part)) ||
  ('args' in node && node.args.some((one) => found.has(one)));

/** A graph as a list of operations that refer to one another by number. */
function shapeOf(levels: readonly Node[]): string[] {
  const numbers = new Map(inOrder(levels).map((node, i) => [node, i]));
  return [...numbers.keys()].map((node) =>
    JSON.stringify(node, (key, value) =>
      key !== '' && numbers.has(value) ? `#${numbers.get(value)}` : value,
    ),
  );
}
