import { describe, expect, test } from 'vitest';
import { longestScriptMs, parseScript } from '../../engine/controls/script.ts';
import { pieceWithButtons } from './play.ts';

const piece = pieceWithButtons([
  { name: 'brooch', pin: 2, press: { do: 'next-look' } },
  { name: 'left clasp', pin: 3, press: { do: 'pause' } },
]);
const codes = (text: string) => parseScript(text, piece).diagnostics.map(({ code }) => code);

describe('scripts', () => {
  test('C14 steps are split by ; or new lines, space does not matter', () => {
    const script = {
      contacts: [
        { ms: 100, button: 0, down: true },
        { ms: 150, button: 1, down: false },
      ],
      endMs: 2000,
    };
    expect(parseScript('100 down;150 up left clasp;2000 end', piece).value).toEqual(script);
    expect(parseScript('\n 100  down \r\n\n150\tup   left clasp;;2000 end\n', piece).value).toEqual(script);
  });

  test('C14 a button may be named, the first one need not be', () => {
    const { value } = parseScript('1 down brooch; 2 up; 3 end', piece);
    expect(value?.contacts.map(({ button }) => button)).toEqual([0, 0]);
  });

  test('C14 a name is compared after NFC normalisation', () => {
    const accented = pieceWithButtons([{ name: 'Schn\u00e4lle', pin: 2, press: { do: 'pause' } }]);
    expect(parseScript('1 down Schna\u0308lle; 2 end', accented).value?.contacts[0]?.button).toBe(0);
  });

  test.each([
    ['100 press; 200 end', 'script-step-unreadable'],
    ['-5 down; 200 end', 'script-step-unreadable'],
    ['1.5 down; 200 end', 'script-step-unreadable'],
    ['100 end now', 'script-step-unreadable'],
    ['100 down right clasp; 200 end', 'script-unknown-button'],
    ['100 down; 50 up; 200 end', 'script-order'],
    ['100 end; 200 down', 'script-after-end'],
    ['100 down; 200 up', 'script-without-end'],
    ['', 'script-without-end'],
    [`${longestScriptMs + 1} end`, 'script-too-long'],
    ['99999999999999999999999 end', 'script-too-long'],
  ])('C14 %j is refused as %s', (text, code) => {
    expect(parseScript(text, piece).value).toBeUndefined();
    expect(codes(text)).toEqual([code]);
  });

  test('C14 all faults come together, each with its place', () => {
    const { diagnostics } = parseScript('100 down x;\n  90 up; hop\n200 end', piece);
    expect(diagnostics.map(({ code, span }) => [code, span!.line, span!.column])).toEqual([
      ['script-unknown-button', 1, 1],
      ['script-order', 2, 3],
      ['script-step-unreadable', 2, 10],
    ]);
    expect(diagnostics[2]!.span).toMatchObject({ start: 21, end: 24 });
  });

  test('C14 a piece without buttons has nothing to press', () => {
    const { diagnostics } = parseScript('1 down; 2 end', pieceWithButtons([]));
    expect(diagnostics[0]).toMatchObject({
      code: 'script-unknown-button',
      message: 'The piece has no button.',
    });
  });
});
