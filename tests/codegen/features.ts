/** Small pieces, each with one thing that others lack: what a sketch must and must not contain for it. */
import type { PieceInput } from '../../engine/piece/schema.ts';
import { lookOf, puntLantern } from './scores.ts';

export interface FeatureCase {
  readonly title: string;
  readonly piece: PieceInput;
  readonly has: readonly RegExp[];
  readonly lacks: readonly RegExp[];
}

const nextLook = { name: 'knob', pin: 2, press: { do: 'next-look' } } as const;

const colourKeys = (easing: 'linear' | 'ease' | [number, number, number, number]) => ({
  keys: [
    { atMilliseconds: 100, value: '#102000', easing },
    { atMilliseconds: 1500, value: '#e0f0ff' },
  ],
});

const keyedLook = (easing: Parameters<typeof colourKeys>[0]) =>
  lookOf('Glow', [{ parameters: { tint: colourKeys(easing) } }]);

export const featureCases: readonly FeatureCase[] = [
  {
    title: 'one still colour and no button',
    piece: puntLantern(),
    has: [/PIXEL_COUNT = 8;/, /lay_normal/, /BUTTON_COUNT = 0;/],
    lacks: [
      /leaving_frame/,
      /dissolve_ms/,
      /moves_on/,
      /struct Button\b/,
      /digitalRead/,
      /unit_mul\(clip/,
      /ENDLESS/,
      /seconds\(/,
      /ratio\(/,
      /struct Key\b/,
      /place_x/,
      /lay_(multiply|screen|darken|lighten|plus_lighter)/,
      /KEEP_ALIVE/,
      /BALANCE/,
      /paused = /,
    ],
  },
  {
    title: 'a look without clips',
    piece: puntLantern({ looks: [lookOf('Dark', [])] }),
    has: [/case look_dark: {2}\/\/ "Dark": dark/],
    lacks: [/struct ClipPlan/, /next_pixel/, /\blay_/, /unit_mul/],
  },
  {
    title: 'a dissolve',
    piece: puntLantern({
      looks: [lookOf('Glow', [{}], { dissolveMilliseconds: 300 }), lookOf('Ember', [{}])],
    }),
    has: [/static uint8_t leaving_frame\[FRAME_BYTES\];/, /\{2000, 300\}, +\/\/ look_glow/, /\{2000, {3}0\}/],
    lacks: [/moves_on/],
  },
  {
    title: 'a timed move-on',
    piece: puntLantern({
      looks: [lookOf('Glow', [{}]), lookOf('Ember', [{}], { moveOn: { afterMilliseconds: 5000 } })],
    }),
    has: [/\{2000, 5000, look_glow\}, +\/\/ look_ember/],
    lacks: [/dissolve_ms/, /leaving_frame/],
  },
  {
    title: 'a button that only presses',
    piece: puntLantern({ controls: { buttons: [nextLook] } }),
    has: [/\{2, DO_NEXT_LOOK\}, +\/\/ "knob"/, /DEBOUNCE_MS = 20;/],
    lacks: [
      /HOLD_MS/,
      /DOUBLE_MS/,
      /double_press/,
      /DO_BLACKOUT/,
      /DO_PAUSE/,
      /BRIGHTNESS_STEPS/,
      /ButtonPhase/,
    ],
  },
  {
    title: 'every action and gesture',
    piece: puntLantern({
      looks: [lookOf('Glow', [{}]), lookOf('Ember', [{}])],
      controls: {
        buttons: [
          { ...nextLook, hold: { do: 'blackout' }, double: { do: 'pause' } },
          {
            name: 'pommel',
            pin: 3,
            press: { do: 'previous-look' },
            hold: { do: 'go-to-look', look: 'Ember' },
            double: { do: 'brightness-step' },
          },
        ],
      },
    }),
    has: [
      /\{2, DO_NEXT_LOOK, DO_BLACKOUT, DO_PAUSE\}, +\/\/ "knob"/,
      /\{3, DO_PREVIOUS_LOOK, DO_GO_TO \+ look_ember, DO_BRIGHTNESS_STEP\}, +\/\/ "pommel"/,
    ],
    lacks: [],
  },
  {
    title: 'fades',
    piece: puntLantern({ looks: [lookOf('Glow', [{ fadeInMilliseconds: 300, fadeOutMilliseconds: 200 }])] }),
    has: [/\{clip_still_all, 0, 2000, 300, 200, 255\},/, /static uint8_t fade\(/],
    lacks: [/ENDLESS/],
  },
  {
    title: 'an endless clip that reads time',
    piece: puntLantern({
      looks: [lookOf('Flow', [{ pattern: 'millrace/1', endless: true, startMilliseconds: 40 }])],
    }),
    has: [
      /\{clip_millrace_all, 40, ENDLESS, 255\},/,
      /NINE_HOURS_MS/,
      /static int32_t seconds\(/,
      /gradient_segment\(/,
    ],
    lacks: [/fade_in_ms/],
  },
  {
    title: 'a pattern that reads its turn',
    piece: puntLantern({ looks: [lookOf('Rise', [{ pattern: 'tide/1' }])] }),
    has: [/static int16_t turn_of\(/, /const int16_t turn = clip.turn;/],
    lacks: [/seconds\(/, /place_x/],
  },
  {
    title: 'a pattern that reads places',
    piece: puntLantern({ looks: [lookOf('Rose', [{ pattern: 'windrose/1' }])] }),
    has: [/static const int16_t places_all\[\] IN_FLASH/, /start_walk\(zone_all, places_all\)/],
    lacks: [],
  },
  {
    title: 'keyframes with a linear way',
    piece: puntLantern({ looks: [keyedLook('linear')] }),
    has: [/static const Key keys_tint_red\[\] IN_FLASH/, /value_at\(/, /level_to_lowp\(/],
    lacks: [/eased\(/, /easing_/, /int64_t value/, /clamped\(/],
  },
  {
    title: 'keyframes with an easing',
    piece: puntLantern({ looks: [keyedLook('ease')] }),
    has: [/eased\(/, /easing_1\[\] IN_FLASH/],
    lacks: [/int64_t value/, /clamped\(/],
  },
  {
    title: 'keyframes with an easing that overshoots',
    piece: puntLantern({ looks: [keyedLook([0, 4, 1, -3])] }),
    has: [/int64_t value/, /clamped\(/],
    lacks: [],
  },
  {
    title: 'keyframed parameters whose parts are named alike',
    piece: puntLantern({
      patterns: [
        {
          name: 'Alike',
          source:
            'uniform vec3 tint; uniform lowp float tint_red; lowp vec3 light() { return tint * tint_red; }',
          parameters: [
            { kind: 'colour', name: 'tint', label: 'Tint', default: '#ffffff' },
            { kind: 'number', name: 'tint_red', label: 'Share', min: 0, max: 1, default: 1 },
          ],
        },
      ],
      looks: [
        lookOf('Glow', [
          {
            pattern: 'Alike',
            parameters: {
              tint: colourKeys('linear'),
              tint_red: {
                keys: [
                  { atMilliseconds: 0, value: 0.25 },
                  { atMilliseconds: 1900, value: 1 },
                ],
              },
            },
          },
        ]),
      ],
    }),
    has: [/const int16_t keyed_tint_red = /, /const int16_t keyed_tint_red_2 = /],
    lacks: [/keyed_tint_red_3/],
  },
  ...(['multiply', 'screen', 'darken', 'lighten', 'plus-lighter'] as const).map((blend) => ({
    title: `the blend ${blend}`,
    piece: puntLantern({ looks: [lookOf('Glow', [{ blend }])] }),
    has: [new RegExp(`lay_${blend.replace('-', '_')}\\(at\\.pixel, `)],
    lacks: [/lay_normal/],
  })),
  {
    title: 'a balance',
    piece: puntLantern({ output: { balance: [256, 230, 180] } }),
    has: [/GREEN_BALANCE = 230;/, /balanced\(factor, BLUE_BALANCE\)/],
    lacks: [],
  },
  {
    title: 'a power bank to keep awake',
    piece: puntLantern({ supply: { keepAliveMilliamps: 60 } }),
    has: [/KEEP_ALIVE_MILLIAMPS = 60;/, /keep_supply_awake\(\);/],
    lacks: [],
  },
  {
    title: 'two clips that are the same',
    piece: puntLantern({ looks: [lookOf('Glow', [{ lengthMilliseconds: 500 }]), lookOf('Ember', [{}])] }),
    has: [/\{clip_still_all, 0, 500, 255\},/, /\{clip_still_all, 0, 2000, 255\},/],
    lacks: [/clip_still_all_2/],
  },
];
