/** The form of the file: its order, its words, its head. */
import { describe, expect, it } from 'vitest';
import { generateSketch } from '../../codegen/sketch.ts';
import { toolVersion } from '../../codegen/version.ts';
import { cautionsFor } from '../../engine/safety/cautions.ts';
import packageJson from '../../package.json' with { type: 'json' };
import { featureCases } from './features.ts';
import { sampleFiles, sampleScore, scoreOf } from './scores.ts';

const sketches = [
  ...sampleFiles.map((file) => [file, sampleScore(file)] as const),
  ...featureCases.map(({ title, piece }) => [title, scoreOf(piece)] as const),
].map(([title, score]) => ({ title, score, text: generateSketch(score, 'atmega328p').value!.text }));

/** Without comments and strings. */
const codeOf = (text: string) => text.replace(/\/\/.*$/gm, '').replace(/"(?:[^"\\]|\\.)*"/g, '""');

const coreWords = new Set(
  'setup loop millis micros pinMode digitalRead digitalWrite HIGH LOW INPUT_PULLUP OUTPUT'.split(' '),
);
/** What a sketch core brings beside these; common practice, no source. */
const otherCoreWords =
  'delay delayMicroseconds analogRead analogWrite Serial String tone random map constrain abs min max round ' +
  'radians degrees sq bit bitRead bitSet lowByte highByte word boolean byte interrupts noInterrupts INPUT ' +
  'attachInterrupt F PI yield LED_BUILTIN';
const otherWords = 'float double malloc free new delete throw try std goto';

describe.each(sketches)('the sketch of $title', ({ score, text }) => {
  it('S1 comes in the order of its sections, types before the first function', () => {
    const marks = [
      '// "',
      '// Before anybody wears it:',
      '#include <stdint.h>',
      '// ---- SETTINGS: change what you like -',
      '// ---- LOOKS AND BUTTONS: ',
      '// ---- TYPES: ',
      '// ---- LOOKS: what is on, and when -',
      '  switch (now.look) {',
      '// ---- MY CODE: yours -',
      '  // >>> my code\n',
      '// ---- MACHINERY BELOW: leave it -',
      'void setup() {',
      'void loop() {',
    ];
    const places = marks.map((mark) => text.indexOf(mark));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    const lastType = Math.max(...[...text.matchAll(/^(?:struct|enum|typedef) /gm)].map(({ index }) => index));
    expect(lastType).toBeLessThan(
      text.search(/^(?:static |inline |constexpr )*[\w ]+\*?&? ?\w+\([^;{]*\) \{$/m),
    );
  });

  it('S1 says what it is and what to mind', () => {
    const head = text.slice(0, text.indexOf('#if'));
    expect(head).toContain(`weftlight ${toolVersion}`);
    expect(head).toMatch(/the piece with the hash [0-9a-f]{16}\./);
    expect(head).toContain('for ATmega328P at 16 MHz');
    expect(head).toContain(`${score.pixels.length} x WS2812B on pin ${score.piece.lines[0]!.pin}`);
    for (const look of score.looks) expect(head).toMatch(new RegExp(`\\d+ mA at most: "${look.name}"`));
    const flowing = head.replace(/\n\/\/ +/g, ' ');
    for (const { short } of cautionsFor(score.piece)) expect(flowing).toContain(`- ${short}`);
  });

  it('S4 uses the few words of the sketch core that it may', () => {
    const words = new Set(codeOf(text).match(/\b[A-Za-z_]\w*\b/g));
    for (const word of `${otherCoreWords} ${otherWords}`.split(' ')) expect(words).not.toContain(word);
    expect(words).toContain('millis');
    expect([...coreWords].filter((word) => words.has(word)).length).toBeGreaterThanOrEqual(8);
  });

  it('S4 has no number with a decimal point', () => {
    expect(codeOf(text)).not.toMatch(/\b\d+\.\d|\d\.\B|\B\.\d/);
  });

  it('is neat: no tab, no space at a line end, one empty line at most, lines that fit', () => {
    expect(text).not.toMatch(/\t| $|\n\n\n|\r/m);
    expect(text.endsWith('}\n')).toBe(true);
    for (const line of text.split('\n')) {
      // A pattern's expression is as long as it is.
      if (!/^ {2,4}(const|lay_)/.test(line)) expect(line.length, line).toBeLessThanOrEqual(120);
    }
  });
});

it('the version in the head is that of the package', () => {
  expect(toolVersion).toBe(packageJson.version);
});
