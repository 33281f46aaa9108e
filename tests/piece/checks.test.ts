/** What needs two places of a piece to be judged: each rule broken once, and just kept. */
import { describe, expect, test } from 'vitest';
import { checkPiece } from '../../engine/piece/load.ts';
import { clipPath, stageWith } from './stage.ts';

type Changes = Readonly<Record<string, unknown>>;

function found(changes: Changes): string[] {
  return checkPiece(stageWith(changes)).diagnostics.map(({ code, path }) => `${code} ${path}`);
}

const straight = (count: number) => ({ kind: 'straight', count, start: [0, 0], pitchMillimetres: 20 });
const run = (name: string, count = 8, more = {}) => ({ name, flat: straight(count), ...more });
const look = (name: string, more = {}) => ({ name, lengthMilliseconds: 1000, tracks: [], ...more });
const zone = (name: string, source: unknown) => ({ name, source });
const all = { kind: 'all' };
const rail = 'lines[0].runs[0]';
const clip = (start: number, length: number, more = {}) => ({
  pattern: 'still/1',
  startMilliseconds: start,
  lengthMilliseconds: length,
  ...more,
});
const clips = (...list: unknown[]) => ({ 'looks[0].tracks[0].clips': list });
const button = (name: string, pin: number, more = {}) => ({ name, pin, press: { do: 'next-look' }, ...more });
const pattern = (name: string, parameters: unknown[] = [], source = '') => ({ name, source, parameters });
const number = (min: number, max: number, usual: number) => ({
  kind: 'number',
  name: 'n',
  label: 'n',
  min,
  max,
  default: usual,
});

/** A table of changes to the landing stage and all that is found after them. */
function rules(title: string, cases: readonly [name: string, changes: Changes, ...found: string[]][]): void {
  describe(title, () => {
    test.each(cases.map(([name, changes, ...expected]) => ({ name, changes, expected })))(
      '$name',
      ({ changes, expected }) => {
        expect(found(changes)).toEqual(expected);
      },
    );
  });
}

rules('names', [
  ['two runs', { 'lines[0].runs': [run('a'), run('a')] }, 'name-twice lines[0].runs[1].name'],
  ['a run called all', { [`${rail}.name`]: 'all' }, `name-twice ${rail}.name`],
  ['a zone like a run', { zones: [zone('rail', all)] }, 'name-twice zones[0].name'],
  ['a zone called all', { zones: [zone('all', all)] }, 'name-twice zones[0].name'],
  ['two zones', { zones: [zone('z', all), zone('z', all)] }, 'name-twice zones[1].name'],
  ['two looks', { looks: [look('a'), look('b'), look('a')] }, 'name-twice looks[2].name'],
  ['upper case is not lower case', { looks: [look('a'), look('A')] }],
  ['the same after NFC', { looks: [look('F\u00e4hre'), look('Fa\u0308hre')] }, 'name-twice looks[1].name'],
  ['two patterns', { patterns: [pattern('p'), pattern('p')] }, 'name-twice patterns[1].name'],
  [
    'two buttons',
    { 'controls.buttons': [button('b', 2), button('b', 3)] },
    'name-twice controls.buttons[1].name',
  ],
  ['a look like a zone like a pattern', { zones: [zone('Dusk', all)], patterns: [pattern('Dusk')] }],
]);

/** For the 1.4 A that 2,000 dark pixels draw. */
const strong = { 'supply.limitMilliamps': 3000 };

rules('runs', [
  ['2,000 pixels', { [`${rail}.flat.count`]: 2000, ...strong }],
  ['2,001 pixels', { 'lines[0].runs': [run('a', 2000), run('b', 1)], ...strong }, 'too-many-pixels lines'],
  [
    'a grid too large for memory',
    { [`${rail}.flat`]: { kind: 'grid', columns: 2000, rows: 2000, start: [0, 0], pitchMillimetres: 1 } },
    'too-many-pixels lines',
    'limit-too-low supply.limitMilliamps',
  ],
  ['worn shape of another count', { [`${rail}.worn`]: straight(7) }, `worn-count ${rail}.worn`],
  ['removed behind the end', { [`${rail}.removed`]: [7, 8] }, `position-outside ${rail}.removed[1]`],
  ['hidden behind the end', { [`${rail}.hidden`]: [8] }, `position-outside ${rail}.hidden[0]`],
  ['removed twice', { [`${rail}.removed`]: [3, 3] }, `position-twice ${rail}.removed[1]`],
  [
    'removed and hidden',
    { [`${rail}.removed`]: [3], [`${rail}.hidden`]: [2, 3] },
    `position-twice ${rail}.hidden[1]`,
  ],
  [
    'nothing left to light',
    { 'lines[0].runs': [run('a', 2, { removed: [0], hidden: [1] })] },
    'no-pixels lines',
  ],
]);

rules('zones', [
  [
    'a run that is not there',
    { zones: [zone('z', { kind: 'run', run: 'rial' })] },
    'run-unknown zones[0].source.run',
  ],
  [
    'deep inside, every one of them',
    {
      zones: [
        zone('z', {
          kind: 'union',
          of: [
            { kind: 'reversed', of: { kind: 'run', run: 'x' } },
            { kind: 'run', run: 'y' },
          ],
        }),
      ],
    },
    'run-unknown zones[0].source.of[0].of.run',
    'run-unknown zones[0].source.of[1].run',
  ],
  [
    'a range behind the end',
    { zones: [zone('z', { kind: 'range', run: 'rail', first: 8, last: 3 })] },
    'position-outside zones[0].source.first',
  ],
  [
    'a pixel twice',
    { zones: [zone('z', { kind: 'union', of: [all, { kind: 'range', run: 'rail', first: 2, last: 2 }] })] },
    'zone-pixel-twice zones[0].source',
  ],
  [
    'without pixels',
    { [`${rail}.hidden`]: [2], zones: [zone('z', { kind: 'range', run: 'rail', first: 2, last: 2 })] },
    'zone-empty zones[0]',
  ],
]);

rules('own patterns', [
  ['a name of the library', { patterns: [pattern('tide/1')] }, 'pattern-name-reserved patterns[0].name'],
  ['8,192 bytes', { patterns: [pattern('p', [], 'x'.repeat(8192))] }],
  [
    '8,193 bytes',
    { patterns: [pattern('p', [], `${'x'.repeat(8190)}€`)] },
    'pattern-too-long patterns[0].source',
  ],
  [
    'two parameters of a name',
    { patterns: [pattern('p', [number(0, 1, 0), number(0, 1, 0)])] },
    'name-twice patterns[0].parameters[1].name',
  ],
  [
    'a range upside down',
    { patterns: [pattern('p', [number(1, 0, 0.5)])] },
    'range-reversed patterns[0].parameters[0].min',
  ],
  [
    'a default outside',
    { patterns: [pattern('p', [number(0, 1, 1.5)])] },
    'parameter-range patterns[0].parameters[0].default',
  ],
  ['a range of one value', { patterns: [pattern('p', [number(1, 1, 1)])] }],
]);

rules('looks', [
  [
    'move on to nowhere',
    { looks: [look('a', { moveOn: { afterMilliseconds: 500, to: 'b' } })] },
    'look-unknown looks[0].moveOn.to',
  ],
  ['move on to the next', { looks: [look('a', { moveOn: { afterMilliseconds: 500 } })] }],
  [
    'a button that leads nowhere',
    { 'controls.buttons': [button('b', 2, { hold: { do: 'go-to-look', look: 'dusk' } })] },
    'look-unknown controls.buttons[0].hold.look',
  ],
  [
    '1,025 clips',
    {
      'looks[0].lengthMilliseconds': 20_480,
      'looks[0].tracks': [{ clips: inTurn(1024) }, { clips: inTurn(1) }],
    },
    'too-many-clips looks',
  ],
]);

/** Clips of 20 ms one after the other, so that their number is all that is wrong. */
function inTurn(count: number) {
  return Array.from({ length: count }, (_, i) => clip(20 * i, 20));
}

rules('clips', [
  ['up to the end of the look', clips(clip(1000, 3000))],
  ['beyond it', clips(clip(1001, 3000)), `clip-outside-look ${clipPath}`],
  ['one after the other', clips(clip(0, 1000), clip(1000, 1000))],
  ['in any order', clips(clip(1000, 1000), clip(0, 1000))],
  [
    'overlapping by a millisecond',
    clips(clip(0, 1000), clip(999, 1000)),
    'clips-overlap looks[0].tracks[0].clips[1]',
  ],
  ['one inside of the other', clips(clip(500, 20), clip(0, 1000)), `clips-overlap ${clipPath}`],
  [
    'the same time on two tracks',
    { 'looks[0].tracks': [{ clips: [clip(0, 1000)] }, { clips: [clip(0, 1000)] }] },
  ],
  ['endless behind another', clips(clip(0, 1000), clip(1000, 20, { endless: true }))],
  [
    'behind an endless one',
    clips(clip(0, 20, { endless: true }), clip(2000, 20)),
    'clips-overlap looks[0].tracks[0].clips[1]',
  ],
  [
    'two endless ones',
    clips(clip(0, 20, { endless: true }), clip(3000, 20, { endless: true })),
    'clips-overlap looks[0].tracks[0].clips[1]',
  ],
  ['endless from a later loop on', clips(clip(9000, 3000, { endless: true }))],
  ['a fade as long as the clip', clips(clip(0, 500, { fadeInMilliseconds: 500, fadeOutMilliseconds: 500 }))],
  [
    'a fade-in that is longer',
    clips(clip(0, 500, { fadeInMilliseconds: 501 })),
    `fade-too-long ${clipPath}.fadeInMilliseconds`,
  ],
  [
    'a fade-out that is longer',
    clips(clip(0, 500, { fadeOutMilliseconds: 501 })),
    `fade-too-long ${clipPath}.fadeOutMilliseconds`,
  ],
  [
    'an endless clip that would fade out',
    clips(clip(0, 500, { endless: true, fadeOutMilliseconds: 9 })),
    `fade-out-idle ${clipPath}.fadeOutMilliseconds`,
  ],
  ['an unknown zone', clips(clip(0, 500, { zone: 'Rail' })), `zone-unknown ${clipPath}.zone`],
  [
    'a run that stays dark',
    { 'lines[0].runs': [run('a'), run('b', 1, { hidden: [0] })], ...clips(clip(0, 500, { zone: 'b' })) },
    `zone-empty ${clipPath}.zone`,
  ],
  ['an unknown pattern', clips(clip(0, 500, { pattern: 'still' })), `pattern-unknown ${clipPath}.pattern`],
  ['an unknown revision', clips(clip(0, 500, { pattern: 'still/2' })), `pattern-unknown ${clipPath}.pattern`],
  ['an own pattern', { patterns: [pattern('mine')], ...clips(clip(0, 500, { pattern: 'mine' })) }],
]);

const sleeper = (name: string, value: unknown) =>
  clips(clip(0, 500, { pattern: 'sleeper/1', parameters: { [name]: value } }));
const procession = (name: string, value: unknown) =>
  clips(clip(0, 500, { pattern: 'procession/1', parameters: { [name]: value } }));
const key = (atMilliseconds: number, value: unknown) => ({ atMilliseconds, value });
const at = (name: string) => `${clipPath}.parameters.${name}`;

rules('parameters', [
  ['unknown', sleeper('pace', 1), `parameter-unknown ${at('pace')}`],
  ['a number', sleeper('period', 20)],
  ['a number out of range', sleeper('period', 20.01), `parameter-range ${at('period')}`],
  ['a colour where a number is', sleeper('period', '#000000'), `parameter-kind ${at('period')}`],
  ['a number where a colour is', sleeper('tint', 1), `parameter-kind ${at('tint')}`],
  ['true where a number is', sleeper('period', true), `parameter-kind ${at('period')}`],
  ['keys', sleeper('period', { keys: [key(0, 1), key(100, 20)] })],
  ['keys of colour', sleeper('tint', { keys: [key(0, '#000000')] })],
  [
    'a key out of range',
    sleeper('period', { keys: [key(0, 5), key(100, 0.5)] }),
    `parameter-range ${at('period')}.keys[1].value`,
  ],
  [
    'a key of another kind',
    sleeper('tint', { keys: [key(0, 5)] }),
    `parameter-kind ${at('tint')}.keys[0].value`,
  ],
  ['a whole number', procession('lit', 3)],
  ['a broken whole number', procession('lit', 2.5), `parameter-kind ${at('lit')}`],
  ['keys of a whole number', procession('lit', { keys: [key(0, 1), key(100, 16)] })],
  [
    'a gradient where a colour is',
    sleeper('tint', [{ at: 0, colour: '#000000' }]),
    `parameter-kind ${at('tint')}`,
  ],
  [
    'keys of yes and no',
    clips(clip(0, 500, { pattern: 'tide/1', parameters: { backwards: { keys: [key(0, 1)] } } })),
    `parameter-kind ${at('backwards')}`,
  ],
  ['a name of every object', sleeper('constructor', 1), `parameter-unknown ${at('constructor')}`],
]);

rules('pins', [
  ['two of a number', { 'controls.buttons': [button('b', 6)] }, 'pin-twice controls.buttons[0].pin'],
  [
    'two buttons on one',
    { 'controls.buttons': [button('a', 2), button('b', 2)] },
    'pin-twice controls.buttons[1].pin',
  ],
  ['A5', { 'lines[0].pin': 19 }],
  ['one that the chip lacks', { 'lines[0].pin': 20 }, 'pin-unknown lines[0].pin'],
  ['one that another chip may have', { board: 'rp2040', 'lines[0].pin': 28 }],
  ['the serial line', { 'lines[0].pin': 1 }, 'pin-shared lines[0].pin'],
]);

rules('gestures', [
  [
    'a hold within the bouncing',
    { controls: { debounceMilliseconds: 100, holdMilliseconds: 100 } },
    'gesture-times controls.holdMilliseconds',
  ],
  [
    'a double press within the bouncing',
    { controls: { debounceMilliseconds: 50, doubleMilliseconds: 50 } },
    'gesture-times controls.doubleMilliseconds',
  ],
  [
    'caught before the hold',
    { controls: { holdMilliseconds: 1000, caughtMilliseconds: 1000 } },
    'gesture-times controls.caughtMilliseconds',
  ],
  ['steps that fall', { 'controls.brightnessSteps': [32, 16] }, 'steps-order controls.brightnessSteps'],
  [
    'a button without a task',
    { 'controls.buttons': [{ name: 'b', pin: 2 }] },
    'button-idle controls.buttons[0]',
  ],
]);

rules('output and supply', [
  ['a balance of three', { 'output.balance': [256, 200, 0] }],
  [
    'a balance of four on three channels',
    { 'output.balance': [1, 2, 3, 4] },
    'balance-length output.balance',
  ],
  ['half the limit kept alive', { supply: { limitMilliamps: 200, keepAliveMilliamps: 100 } }],
  [
    'more than half',
    { supply: { limitMilliamps: 201, keepAliveMilliamps: 101 } },
    'keep-alive-too-high supply.keepAliveMilliamps',
  ],
  // 10.4 mA for the chip and 8 x 0.7 mA for dark pixels make 16.0 mA.
  ['a limit that idling reaches', { 'supply.limitMilliamps': 16 }, 'limit-too-low supply.limitMilliamps'],
  ['a limit just above', { 'supply.limitMilliamps': 17 }],
  ['12 V on 5 V pixels', { 'supply.volts': 12 }, 'volts-too-high supply.volts'],
  ['a bare lithium cell', { 'supply.volts': 3.7 }, 'volts-too-low supply.volts'],
]);

test('warnings leave the piece usable, errors do not', () => {
  const warned = checkPiece(stageWith({ 'supply.volts': 12 }));
  expect(warned.diagnostics).toMatchObject([{ severity: 'warning' }]);
  expect(warned.value).toBeDefined();
  const refused = checkPiece(stageWith({ 'lines[0].pin': 20 }));
  expect(refused.value).toBeUndefined();
});

test('even more warnings than are shown', () => {
  const idle = { pattern: 'still/1', lengthMilliseconds: 500, endless: true, fadeOutMilliseconds: 9 };
  const tracks = Array.from({ length: 60 }, () => ({ clips: [idle] }));
  const looks = Array.from({ length: 5 }, (_, i) => look(`l${i}`, { tracks }));
  const { value, diagnostics } = checkPiece(stageWith({ looks }));
  expect(value).toBeDefined();
  expect(diagnostics).toHaveLength(201);
  expect(diagnostics.at(-1)).toMatchObject({ severity: 'warning', message: '100 more are not shown.' });
});

test('advice names what was probably meant', () => {
  const advice = (changes: Changes) => checkPiece(stageWith(changes)).diagnostics[0]?.advice;
  expect(advice(clips(clip(0, 500, { zone: 'Rial' })))).toBe('Did you mean "rail"?');
  expect(advice(clips(clip(0, 500, { pattern: 'stil/1' })))).toBe('Did you mean "still/1"?');
  expect(advice(sleeper('perod', 3))).toBe('Did you mean "period"?');
  expect(advice(sleeper('x', 3))).toBe('Choose one of "tint", "period", "lowest".');
});
