/** Inverses of edits that came one after the other, as one: so that a drag does not grow with its way. */
import { type Edit, type EditKind, type EditOf, type SingleEdit, together } from './edit.ts';
import { same } from './same.ts';

/**
 * The edit that does what `newer` and then `older` would do, if one alone can. Where both write the same
 * values, the older one has the last word; moves and names are joined at the ends.
 */
export function merged(older: Edit, newer: Edit): Edit | undefined {
  const slot = slotOf(older);
  if (slot !== undefined && slot === slotOf(newer)) return older;
  if (older.kind !== newer.kind) return undefined;
  const join = joints[older.kind] as ((older: Edit, newer: Edit) => Edit | undefined) | undefined;
  return join?.(older, newer);
}

/** The way back that does `newer` first, then all of `older`. */
export function joined(name: string, older: Edit, newer: Edit): Edit {
  const whole = merged(older, newer);
  if (whole !== undefined) return whole;
  const [newest, ...others] = older.kind === 'together' ? older.edits : [older];
  const next = merged(newest!, newer);
  return together(name, next === undefined ? [newer, newest!, ...others] : [next, ...others]);
}

/** What an edit overwrites, whatever was there before; undefined for one that does more than that. */
function slotOf(edit: Edit): string | undefined {
  if (edit.kind !== 'together') return slotOfSingle(edit);
  const slots = edit.edits.map(slotOfSingle);
  return slots.includes(undefined) ? undefined : slots.join('\n');
}

function slotOfSingle(edit: SingleEdit): string | undefined {
  if (edit.kind === 'set-parameter') return JSON.stringify([edit.kind, edit.at, edit.parameter]);
  if (!('set' in edit) || edit.kind === 'set-key') return undefined;
  const { set, ...address } = edit;
  return JSON.stringify([address, Object.keys(set).sort()]);
}

type Joints = {
  readonly [Kind in EditKind]?: (older: EditOf<Kind>, newer: EditOf<Kind>) => EditOf<Kind> | undefined;
};

const joints: Joints = {
  'move-clip': (older, newer) => (same(newer.to, older.at) ? { ...older, at: newer.at } : undefined),
  'rename-run': (older, newer) => (newer.name === older.run ? { ...older, run: newer.run } : undefined),
  'rename-zone': (older, newer) => (newer.name === older.zone ? { ...older, zone: newer.zone } : undefined),
  'rename-pattern': (older, newer) =>
    newer.name === older.pattern ? { ...older, pattern: newer.pattern } : undefined,
  'rename-look': (older, newer) => (newer.name === older.look ? { ...older, look: newer.look } : undefined),
  'rename-button': (older, newer) =>
    newer.name === older.button ? { ...older, button: newer.button } : undefined,
};
