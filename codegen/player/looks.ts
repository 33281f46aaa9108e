/** What the maker composed, as C++ that reads like a cue sheet: one line a clip. */
import type { ScoredClip } from '../../engine/look/score.ts';
import type { Action, Button, Piece } from '../../engine/piece/schema.ts';
import type { Plan } from './plan.ts';
import { alignComments, quoted } from './text.ts';

/** `enum Look` and the table of looks. */
export function printLookTable(plan: Plan): string {
  const { piece } = plan.score;
  const { dissolve, moveOn } = plan.features;
  const numbers = plan.lookNames.map((name, index) => `  ${name} = ${index},`);
  const table = piece.looks.map((look, index) => {
    const values = [String(look.lengthMilliseconds)];
    if (dissolve) values.push(String(look.dissolveMilliseconds));
    if (moveOn) {
      values.push(String(look.moveOn?.afterMilliseconds ?? 0));
      values.push(plan.lookNames[moveTarget(piece, index)]!);
    }
    return values;
  });
  const widths = table[0]!.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  const lines = table.map((row, index) => {
    const cells = row.map((cell, column) => (/^\d/.test(cell) ? cell.padStart(widths[column]!) : cell));
    return `  {${cells.join(', ')}},  // ${plan.lookNames[index]}`;
  });
  return alignComments([
    '// The looks, in the order in which a button steps through them.',
    'enum Look : uint8_t {',
    ...numbers,
    '};',
    `constexpr uint8_t LOOK_COUNT = ${piece.looks.length};`,
    'static_assert(START_LOOK < LOOK_COUNT, "START_LOOK is the number of one of the looks, from 0.");',
    'constexpr uint8_t NO_LOOK = 255;',
    '',
    'struct LookPlan {',
    '  uint32_t length_ms;  // then its clips begin anew',
    ...(dissolve ? ['  uint16_t dissolve_ms;  // the look before it fades over into it; 0: it cuts'] : []),
    ...(moveOn
      ? [
          '  uint32_t moves_on_ms;  // by itself, this long after it was entered; 0: never',
          '  Look moves_on_to;',
        ]
      : []),
    '};',
    'static const LookPlan LOOKS[LOOK_COUNT] IN_FLASH = {',
    ...lines,
    '};',
    '',
  ]).join('\n');
}

function moveTarget(piece: Piece, index: number): number {
  const to = piece.looks[index]!.moveOn?.to;
  if (to !== undefined) return piece.looks.findIndex((look) => look.name === to);
  return (index + 1) % piece.looks.length;
}

/** The actions in use and the table of buttons. */
export function printButtonTable(plan: Plan): string {
  const { buttons } = plan.score.piece.controls;
  const { features } = plan;
  if (buttons.length === 0) return 'constexpr uint8_t BUTTON_COUNT = 0;\n';
  const gestures = features.gestures === true;
  const lines = buttons.map((button) => {
    const cells = [String(button.pin), actionText(plan, button.press)];
    if (gestures) cells.push(actionText(plan, button.hold), actionText(plan, button.double));
    return `  {${cells.join(', ')}},  // ${quoted(button.name)}`;
  });
  const used = actionWords.filter(([feature]) => features[feature]).map(([, word]) => `  ${word},`);
  return alignComments([
    '// What a button can do.',
    'enum Action : uint8_t {',
    '  DO_NOTHING,',
    ...used,
    ...(features.goToLook ? ['  DO_GO_TO = 128,  // plus the look'] : []),
    '};',
    '',
    'struct ButtonPlan {',
    '  uint8_t pin;  // the button joins this pin to ground',
    '  uint8_t press;',
    ...(gestures ? ['  uint8_t hold;', '  uint8_t double_press;'] : []),
    '};',
    `constexpr uint8_t BUTTON_COUNT = ${buttons.length};`,
    'static const ButtonPlan BUTTONS[BUTTON_COUNT] IN_FLASH = {',
    ...lines,
    '};',
    '',
  ]).join('\n');
}

const actionWords = [
  ['nextLook', 'DO_NEXT_LOOK'],
  ['previousLook', 'DO_PREVIOUS_LOOK'],
  ['brightnessStep', 'DO_BRIGHTNESS_STEP'],
  ['blackout', 'DO_BLACKOUT'],
  ['pause', 'DO_PAUSE'],
] as const;

const actionNames: Record<Exclude<Action['do'], 'go-to-look'>, string> = {
  'next-look': 'DO_NEXT_LOOK',
  'previous-look': 'DO_PREVIOUS_LOOK',
  'brightness-step': 'DO_BRIGHTNESS_STEP',
  blackout: 'DO_BLACKOUT',
  pause: 'DO_PAUSE',
};

function actionText(plan: Plan, action: Button['press']): string {
  if (action === undefined) return 'DO_NOTHING';
  if (action.do !== 'go-to-look') return actionNames[action.do];
  const look = plan.score.piece.looks.findIndex(({ name }) => name === action.look);
  return `DO_GO_TO + ${plan.lookNames[look]}`;
}

/** The `switch` of the looks: what each shows, one line a clip. */
export function printLookSwitch(plan: Plan): string {
  const cases = plan.score.looks.flatMap((look, index) => {
    const head = `    case ${plan.lookNames[index]}:`;
    if (look.clips.length === 0) return [`${head}  // ${quoted(look.name)}: dark`, '      break;'];
    const rows = look.clips.map((clip, at) => clipCells(plan, clip, plan.clipNames[index]![at]!));
    return [
      `${head} {  // ${quoted(look.name)}`,
      '      static const ClipPlan clips[] IN_FLASH = {',
      ...alignCells(rows).map((row) => `        {${row}},`),
      '      };',
      '      play(clips, COUNT_OF(clips), now);',
      '      break;',
      '    }',
    ];
  });
  return [
    '// What each look shows: its clips, the bottom one first.',
    ...(plan.features.clips
      ? [`// Clip, starts, lasts${plan.features.fades ? ', fades in, fades out' : ''}, opacity.`]
      : []),
    'static void draw_look(const LookTime &now) {',
    '  switch (now.look) {',
    ...cases,
    '  }',
    '}',
    '',
  ].join('\n');
}

function clipCells(plan: Plan, clip: ScoredClip, name: string): string[] {
  const { startMilliseconds, lengthMilliseconds, fadeInMilliseconds, fadeOutMilliseconds, opacity } = clip;
  // An endless clip has no end that it could fade out towards.
  const fades = [fadeInMilliseconds, clip.endless ? 0 : fadeOutMilliseconds];
  const lasts = clip.endless ? 'ENDLESS' : lengthMilliseconds;
  return [name, startMilliseconds, lasts, ...(plan.features.fades ? fades : []), opacity].map(String);
}

/** Cells with a comma between; the first column to the left, numbers to the right. */
function alignCells(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map((row) =>
    row
      .map((cell, column) =>
        column === 0 ? `${cell},`.padEnd(widths[0]! + 1) : `${cell.padStart(widths[column]!)},`,
      )
      .join(' ')
      .replace(/,$/, ''),
  );
}
