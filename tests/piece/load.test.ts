/** Loading a piece: everything that is wrong comes out at once, each with its path, in words that help. */
import { describe, expect, test } from 'vitest';
import { mostDiagnostics } from '../../engine/piece/findings.ts';
import { checkPiece, loadPiece } from '../../engine/piece/load.ts';
import { clipPath as clip, stage, stageWith } from './stage.ts';

const codes = (data: unknown) => checkPiece(data).diagnostics.map(({ code, path }) => `${code} ${path}`);

describe('a sound file', () => {
  test('becomes a piece with its defaults', () => {
    const { value, diagnostics } = loadPiece(JSON.stringify(stage()));
    expect(diagnostics).toEqual([]);
    expect(value).toMatchObject({
      tickMilliseconds: 20,
      zones: [],
      controls: { debounceMilliseconds: 20, holdMilliseconds: 600, doubleMilliseconds: 300, buttons: [] },
      output: { startBrightness: 64, curve: 'srgb' },
      supply: { limitMilliamps: 400, volts: 5 },
    });
    expect(value?.looks[0]?.tracks[0]?.clips[0]).toMatchObject({
      zone: 'all',
      opacity: 255,
      blend: 'normal',
    });
  });

  test('keeps names in NFC', () => {
    const decomposed = 'Fa\u0308hre';
    expect(checkPiece(stageWith({ name: decomposed })).value?.name).toBe('F\u00e4hre');
  });

  test('loads the same from text and from data', () => {
    expect(checkPiece(stage())).toEqual(loadPiece(JSON.stringify(stage())));
  });
});

describe('one fault, one diagnostic', () => {
  const tint = `${clip}.parameters.tint`;
  const faults: readonly [path: string, value: unknown, code: string, at: string, advice: RegExp][] = [
    ['name', undefined, 'missing', 'name', /text/],
    ['name', 7, 'wrong-type', 'name', /double quotes/],
    ['name', '', 'name-length', 'name', /within/],
    ['name', 'x'.repeat(41), 'name-length', 'name', /within/],
    ['name', 'x'.repeat(100_000), 'name-length', 'name', /within/],
    ['name', 'a\u202eb', 'name-characters', 'name', /anew/],
    ['name', 'a\nb', 'name-characters', 'name', /anew/],
    ['name', 'a\ud800', 'name-characters', 'name', /anew/],
    ['name', ' a', 'name-spaces', 'name', /Remove/],
    ['nmae', 'x', 'unknown-key', 'nmae', /"name"/],
    ['colour', 'x', 'unknown-key', 'colour', /known are "version", "name"/],
    ['board', 'atmega328', 'unknown-word', 'board', /"atmega328p"/],
    ['board', 3, 'unknown-word', 'board', /one of "atmega328p"/],
    ['board', undefined, 'missing', 'board', /"host"/],
    ['tickMilliseconds', 4, 'out-of-range', 'tickMilliseconds', /at least 5/],
    ['tickMilliseconds', 20.5, 'wrong-type', 'tickMilliseconds', /whole number/],
    ['tickMilliseconds', Number.NaN, 'wrong-type', 'tickMilliseconds', /number/],
    ['tickMilliseconds', Number.POSITIVE_INFINITY, 'wrong-type', 'tickMilliseconds', /number/],
    ['tickMilliseconds', 1e300, 'out-of-range', 'tickMilliseconds', /at most/],
    ['lines', [], 'wrong-length', 'lines', /missing/],
    ['lines', {}, 'wrong-type', 'lines', /square brackets/],
    ['lines[0].runs[0].flat.kind', 'straigt', 'unknown-word', 'lines[0].runs[0].flat.kind', /"straight"/],
    ['lines[0].runs[0].flat.kind', undefined, 'missing', 'lines[0].runs[0].flat.kind', /"ring"/],
    [
      'lines[0].runs[0].flat.diameter',
      4,
      'unknown-key',
      'lines[0].runs[0].flat.diameter',
      /known are "kind"/,
    ],
    [
      'lines[0].runs[0].flat.pitchMillimetres',
      0,
      'out-of-range',
      'lines[0].runs[0].flat.pitchMillimetres',
      /more than 0/,
    ],
    ['lines[0].runs[0].flat.start', [0, 0, 0], 'wrong-length', 'lines[0].runs[0].flat.start', /take out/],
    [
      'lines[0].runs[0].flat.start',
      ['0', 0],
      'wrong-type',
      'lines[0].runs[0].flat.start[0]',
      /without quotes/,
    ],
    [`${clip}.blend`, 'multply', 'unknown-word', `${clip}.blend`, /"multiply"/],
    [`${clip}.endless`, 'yes', 'wrong-type', `${clip}.endless`, /true or false/],
    [tint, '#12345', 'colour-form', tint, /#ffb040/],
    [tint, null, 'wrong-type', tint, /a number, or true or false, or text, or a list, or an object/],
    [
      tint,
      [
        { at: 0.5, colour: '#000000' },
        { at: 0.2, colour: '#ffffff' },
      ],
      'gradient-order',
      tint,
      /rising/,
    ],
    [tint, [{ at: 2, colour: '#000000' }], 'out-of-range', `${tint}[0].at`, /at most 1/],
    [tint, { keys: [] }, 'wrong-length', `${tint}.keys`, /missing/],
    [
      tint,
      { keys: [{ atMilliseconds: 0, value: 'red' }] },
      'colour-form',
      `${tint}.keys[0].value`,
      /#ffb040/,
    ],
    [
      tint,
      { keys: [{ atMilliseconds: 0, value: '#000000', easing: 'ease-inn' }] },
      'unknown-word',
      `${tint}.keys[0].easing`,
      /"ease-in"/,
    ],
    [
      tint,
      { keys: [{ atMilliseconds: 0, value: '#000000', easing: [0, 0, 1] }] },
      'wrong-length',
      `${tint}.keys[0].easing`,
      /missing/,
    ],
    ['output', { curve: 'sgrb' }, 'unknown-word', 'output.curve', /"srgb"/],
    ['output', { curve: { power: 9 } }, 'out-of-range', 'output.curve.power', /at most 4/],
    [
      'controls',
      { buttons: [{ name: 'b', pin: 2, press: { do: 'next' } }] },
      'unknown-word',
      'controls.buttons[0].press.do',
      /"next-look"/,
    ],
    [
      'zones',
      [{ name: 'z', source: { kind: 'twin', of: [] } }],
      'unknown-word',
      'zones[0].source.kind',
      /"twins"/,
    ],
  ];
  test.each(faults)('%s = %j: %s', (path, value, code, at, advice) => {
    const { diagnostics, value: piece } = checkPiece(stageWith({ [path]: value }));
    expect(piece).toBeUndefined();
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({ code, path: at, severity: 'error' });
    expect(diagnostics[0]!.advice).toMatch(advice);
    for (const sentence of [diagnostics[0]!.message, diagnostics[0]!.advice]) {
      expect(sentence).toMatch(/^[\p{Lu}"].*[.?]$/u);
      expect(sentence.length).toBeLessThan(400);
    }
  });

  test('sources of a zone nested one too deep', () => {
    const nested = (depth: number): unknown =>
      depth === 1 ? { kind: 'all' } : { kind: 'reversed', of: nested(depth - 1) };
    expect(codes(stageWith({ zones: [{ name: 'z', source: nested(8) }] }))).toEqual([]);
    expect(codes(stageWith({ zones: [{ name: 'z', source: nested(9) }] }))).toEqual([
      `zone-nesting zones[0].source${'.of'.repeat(7)}.kind`,
    ]);
  });
});

describe('many faults', () => {
  test('all come at once', () => {
    const piece = stageWith({
      board: 'abacus',
      'lines[0].pin': -1,
      [`${clip}.opacity`]: 256,
      [`${clip}.fadeIn`]: 5,
      'supply.limitMilliamps': 'all',
    });
    expect(codes(piece).sort()).toEqual([
      'out-of-range lines[0].pin',
      'out-of-range looks[0].tracks[0].clips[0].opacity',
      'unknown-key looks[0].tracks[0].clips[0].fadeIn',
      'unknown-word board',
      'wrong-type supply.limitMilliamps',
    ]);
  });

  test('come in the order of the text, with line and column', () => {
    const text = [
      '{',
      '  "version": 2,',
      '  "nmae": "Landing stage",',
      '  "board": "abacus",',
      '  "lines": [{ "pin": 6, "part": "ws2812b", "runs": [] }],',
      '  "looks": []',
      '}',
    ].join('\n');
    const { diagnostics } = loadPiece(text);
    expect(diagnostics.map(({ code, path, inFile }) => [inFile?.line, inFile?.column, code, path])).toEqual([
      [3, 11, 'unknown-key', 'nmae'],
      [4, 12, 'unknown-word', 'board'],
      [5, 52, 'wrong-length', 'lines[0].runs'],
      [6, 12, 'wrong-length', 'looks'],
      [1, 1, 'missing', 'name'],
    ]);
  });

  test('are cut off where nobody reads on, and their number is told', () => {
    const look = { name: 7, lengthMilliseconds: 'x', tracks: 3, dissolveMilliseconds: -1, extra: 1 };
    const { diagnostics } = checkPiece(stageWith({ looks: Array.from({ length: 64 }, () => look) }));
    expect(diagnostics).toHaveLength(mostDiagnostics + 1);
    expect(diagnostics.at(-1)).toMatchObject({
      code: 'more-diagnostics',
      message: '120 more are not shown.',
    });
  });
});

describe('what is no piece at all', () => {
  test.each([[null], [7], ['text'], [[]], [true], [undefined], [Symbol('s')], [() => 1]])('%s', (data) => {
    expect(codes(data)).toEqual(['wrong-type ']);
  });

  test('text that is no JSON has its place', () => {
    expect(loadPiece('{"version": 2,\n}').diagnostics).toMatchObject([
      { code: 'json-syntax', path: '', span: { line: 2, column: 1 } },
    ]);
  });
});

describe('hostile data', () => {
  const cyclic = stage();
  cyclic.zones = [cyclic];
  let deep: unknown = {};
  for (let i = 0; i < 100_000; i++) deep = { of: deep };
  const wide = Object.fromEntries(Array.from({ length: 100_000 }, (_, i) => [`k${i}`, i]));
  const bad = { kind: 'union', of: Array.from({ length: 255 }, () => ({ kind: 'range', run: 5 })) };
  const hostile: readonly [string, unknown, string][] = [
    ['a cycle', cyclic, 'too-deep'],
    ['100,000 levels', stageWith({ zones: [{ name: 'z', source: deep }] }), 'too-deep'],
    ['100,000 fields', { ...stage(), ...wide }, 'too-long'],
    ['1,000,000 looks', stageWith({ looks: new Array(1_000_000).fill(0) }), 'too-long'],
    [
      '2,000 empty clips',
      stageWith({ 'looks[0].tracks[0].clips': new Array(2000).fill({}) }),
      'wrong-length',
    ],
    [
      '60,000 faulty sources',
      stageWith({ zones: Array.from({ length: 240 }, (_, i) => ({ name: `z${i}`, source: bad })) }),
      'too-many-faults',
    ],
    [
      'a field __proto__',
      JSON.parse(JSON.stringify(stage()).replace('"name"', '"__proto__"')),
      'key-forbidden',
    ],
  ];
  test.each(hostile)('%s', (_, data, code) => {
    const start = performance.now();
    const { diagnostics, value } = checkPiece(data);
    expect(performance.now() - start).toBeLessThan(1000);
    expect(value).toBeUndefined();
    expect(diagnostics.map((diagnostic) => diagnostic.code)).toContain(code);
    expect(diagnostics.length).toBeLessThanOrEqual(mostDiagnostics + 1);
  });
});
