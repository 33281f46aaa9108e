/** Names that try to be more than names. They are all allowed, and none gets out of its comment or string. */
import { describe, expect, it } from 'vitest';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { withHost } from '../../codegen/rehearse/host.ts';
import { generateSketch } from '../../codegen/sketch.ts';
import { lookOf, puntLantern, scoreOf } from './scores.ts';

const names = [
  '*/ int x; /*',
  'ends with a backslash \\',
  '??/',
  '"); evil(); ("',
  "'",
  '%s%n%d',
  '\\u000a int y;',
  '//',
  '#error no',
  '#define loop',
  'int',
  'loop()',
  'ランタン',
  '☾☾☾',
  'Straße',
  'Strasse',
  '// >>> my code',
  '// <<< my code',
  '$(reboot)',
  '\u00e9\u0301\u0327',
  'R"(raw)"',
  '$&$1$`',
];

const piece = puntLantern({
  name: '*/ #error "\\',
  looks: names.map((name, i) =>
    lookOf(name, [{ pattern: 'still/1', zone: names[i]!, seed: i, parameters: { tint: colour(i) } }]),
  ),
  zones: names.map((name) => ({ name, source: { kind: 'all' } })),
  controls: {
    buttons: names
      .slice(0, 8)
      .map((name, i) => ({ name, pin: i < 4 ? 2 + i : 4 + i, press: { do: 'next-look' } })),
  },
});

function colour(i: number): string {
  return `#${(i * 10 + 5).toString(16).padStart(2, '0')}4080`;
}

describe('S6, S7 names that try to be more', () => {
  const score = scoreOf(piece);

  it('leave the sketch clean', async () => {
    const { text, fileName } = generateSketch(score, 'atmega328p').value!;
    expect(fileName).toBe('error.ino');
    expect((await buildFirmware(text)).diagnostics).toEqual([]);
    expect(text.split('// >>> my code\n').length).toBe(2);
  });

  it('come back from the desk letter by letter', async () => {
    const buttons = score.piece.controls.buttons.map(({ name }) => name);
    const script = `${names.map((_, i) => `${i * 100 + 50} down ${buttons[i % 8]}\n${i * 100 + 90} up ${buttons[i % 8]}\n`).join('')}9000 end\n`;
    const { value, diagnostics } = await withHost(
      generateSketch(score, 'host').value!.text,
      async (program) => {
        for (const { name } of score.looks) expect((await program.frames(name, [0])).length).toBe(1);
        return program.play(script);
      },
      { sanitize: true },
    );
    expect(diagnostics).toEqual([]);
    const told = value!.trimEnd().split('\n');
    const normal = score.looks.map(({ name }) => name);
    expect(told.map((line) => line.replace(/^\d+ look /, ''))).toEqual([...normal.slice(1), normal[0]]);
  });

  it('keep a maker’s code, whatever stands in it', () => {
    const body = '  // $& $1 `` \\ ??/ */ "\n';
    const { text } = generateSketch(score, 'atmega328p').value!;
    const edited = text.replace('  // <<< my code', () => `${body}  // <<< my code`);
    expect(generateSketch(score, 'atmega328p', { previous: edited }).value!.text).toBe(edited);
  });
});
