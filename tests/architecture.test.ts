/**
 * The walls of the house. `engine` knows nothing of browsers, computers, clocks and chance, and of nobody above
 * it; `codegen` builds on `engine` alone, and only its rehearsal runs on a computer.
 */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');

interface SourceFile {
  /** From the project's folder, with forward slashes. */
  readonly path: string;
  readonly text: string;
  /** As written: `zod`, `node:fs`, `../look/score.ts`. */
  readonly imports: readonly string[];
}

function sourcesIn(folder: string): SourceFile[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path) && !path.includes('node_modules'))
    .sort()
    .map((path) => {
      const text = readFileSync(join(root, path), 'utf8');
      return { path, text, imports: importsOf(text) };
    });
}

/** Static, side-effect, re-exporting and dynamic imports; type imports as well, they are ties too. */
function importsOf(text: string): string[] {
  const code = withoutComments(text);
  const forms = [
    /\b(?:import|export)\b[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]/g,
    /\bimport\s*['"]([^'"]+)['"]/g,
    /\b(?:import|require)\s*\(\s*['"]([^'"]+)['"]/g,
  ];
  return forms.flatMap((form) => [...code.matchAll(form)].map((match) => match[1]!));
}

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');
}

/** The file of ours that an import means, or undefined for a package. */
function ownFile(from: string, specifier: string): string | undefined {
  if (!specifier.startsWith('.')) return undefined;
  return relative(root, resolve(root, dirname(from), specifier));
}

const houses = ['engine', 'codegen', 'app'] as const;
const files = Object.fromEntries(houses.map((house) => [house, sourcesIn(house)])) as Record<
  (typeof houses)[number],
  SourceFile[]
>;

const nodeModule = (specifier: string) => specifier.startsWith('node:') || builtinModules.includes(specifier);

function importsInto(sources: readonly SourceFile[], unwanted: (specifier: string, path: string) => boolean) {
  return sources.flatMap(({ path, imports }) =>
    imports
      .filter((specifier) => unwanted(specifier, path))
      .map((specifier) => `${path} imports ${specifier}`),
  );
}

test('there are files to look at, and their imports are found', () => {
  for (const house of houses) expect(files[house].length).toBeGreaterThan(20);
  const found = importsOf(
    `import a, { type b } from 'one';\nimport 'two';\nexport * from "three";\nimport(\n'four');\n// import 'five';`,
  );
  expect(found.sort()).toEqual(['four', 'one', 'three', 'two']);
});

describe('who may know whom', () => {
  const below = { engine: ['engine'], codegen: ['engine', 'codegen'] } as const;

  test.for(['engine', 'codegen'] as const)('%s imports nothing that stands above it', (house) => {
    const allowed = below[house] as readonly string[];
    const strangers = importsInto(files[house], (specifier, path) => {
      const target = ownFile(path, specifier);
      return target !== undefined && !allowed.includes(target.split('/')[0]!);
    });
    expect(strangers).toEqual([]);
  });

  test('engine needs one package, zod, and no module of node', () => {
    expect(
      importsInto(files.engine, (specifier) => !specifier.startsWith('.') && specifier !== 'zod'),
    ).toEqual([]);
  });

  test('codegen needs node and an emulator only where it rehearses', () => {
    const packages = importsInto(
      files.codegen.filter(({ path }) => !path.startsWith('codegen/rehearse/')),
      (specifier) => !specifier.startsWith('.'),
    );
    expect(packages).toEqual([]);
    const rehearsing = importsInto(
      files.codegen,
      (specifier) => !specifier.startsWith('.') && !nodeModule(specifier) && specifier !== 'avr8js',
    );
    expect(rehearsing).toEqual([]);
  });

  test('nothing outside of codegen/rehearse, the command line and the tests draws the rehearsal in', () => {
    const outside = [...files.engine, ...files.codegen, ...files.app].filter(
      ({ path }) => !path.startsWith('codegen/rehearse/') && !path.startsWith('app/cli/'),
    );
    const drawn = importsInto(outside, (specifier, path) =>
      (ownFile(path, specifier) ?? '').startsWith('codegen/rehearse/'),
    );
    expect(drawn).toEqual([]);
  });
});

describe('what engine and codegen are compiled with', () => {
  test.for([
    ['engine', []],
    ['codegen', ['node_modules/@types/node/']],
  ] as const)('%s knows no browser, and no types but its own', ([house, allowed]) => {
    const listed = execFileSync(
      join(root, 'node_modules/.bin/tsc'),
      ['-p', join(root, house, 'tsconfig.json'), '--listFilesOnly'],
      { cwd: root, encoding: 'utf8' },
    )
      .trim()
      .split('\n')
      .map((path) => relative(root, resolve(root, path)));
    expect(listed).toContain('engine/piece/schema.ts');
    expect(listed.filter((path) => path.endsWith('lib.es2022.d.ts'))).toHaveLength(1);
    expect(listed.filter((path) => /lib\.(dom|webworker|scripthost)/.test(path))).toEqual([]);
    const types = listed.filter((path) => path.includes('node_modules/@types/'));
    expect(types.filter((path) => !allowed.some((prefix) => path.startsWith(prefix)))).toEqual([]);
  });

  test('time and chance are arguments: engine asks neither clock nor dice', () => {
    const asks =
      /\b(Date\s*\.|new Date\b|Date\s*\(|Math\s*\.\s*random|performance\s*\.|crypto\s*\.|setTimeout|setInterval)/;
    const asking = files.engine.flatMap(({ path, text }) => {
      const found = asks.exec(withoutComments(text));
      return found === null ? [] : [`${path}: ${found[0]}`];
    });
    expect(asking).toEqual([]);
  });

  test('generated code is made in one file', () => {
    const making = [...files.engine, ...files.codegen, ...files.app]
      .filter(({ text }) => /\bnew Function\b|\beval\s*\(/.test(withoutComments(text)))
      .map(({ path }) => path);
    expect(making).toEqual(['engine/pattern/javascript.ts']);
  });
});

describe('shape', () => {
  // Imports of types alone are gone when the code runs; a circle of those loads nothing in a wrong order.
  test.for(houses)('%s has no circle of imports', (house) => {
    const running = files[house].map(({ path, text }) => ({
      path,
      imports: importsOf(text.replace(/\b(?:import|export) type\b[^;]*;/g, '')),
    }));
    expect(circleIn(running)).toEqual([]);
  });

  test('no file is longer than 500 lines', () => {
    const sources = [...houses.flatMap((house) => files[house]), ...sourcesIn('tests')];
    const lengths = sources.map(({ path, text }) => ({ path, lines: text.split('\n').length - 1 }));
    const long = lengths
      .filter(({ lines }) => lines > 400)
      .map(({ path, lines }) => `${path}: ${lines} lines`);
    if (long.length > 0) console.info(`longer than 400 lines: ${long.join(', ')}`);
    expect(lengths.filter(({ lines }) => lines > 500)).toEqual([]);
  });

  test('names only: nothing is exported by default but what a tool asks for', () => {
    const byDefault = houses
      .flatMap((house) => files[house])
      .filter(({ path, text }) => !path.endsWith('.d.ts') && /^export default\b/m.test(text))
      .map(({ path }) => path);
    expect(byDefault).toEqual([]);
  });
});

/** The first circle found, as the paths on it, or nothing. */
function circleIn(sources: readonly Pick<SourceFile, 'path' | 'imports'>[]): string[] {
  const next = new Map(
    sources.map(({ path, imports }) => [
      path,
      imports.map((specifier) => ownFile(path, specifier)).filter((target) => target !== undefined),
    ]),
  );
  const done = new Set<string>();
  const visit = (path: string, way: readonly string[]): string[] => {
    if (way.includes(path)) return [...way.slice(way.indexOf(path)), path];
    if (done.has(path)) return [];
    for (const target of next.get(path) ?? []) {
      const circle = visit(target, [...way, path]);
      if (circle.length > 0) return circle;
    }
    done.add(path);
    return [];
  };
  for (const path of next.keys()) {
    const circle = visit(path, []);
    if (circle.length > 0) return circle;
  }
  return [];
}
