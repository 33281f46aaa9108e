/**
 * Every way to change a piece. An edit is plain data: it can be saved, sent and read back, and
 * whoever has one can say what it is called (`titleOf`) and what it comes to (`applyEdit`).
 *
 * Plain edits have an inverse of their own. Shorthands say what a hand does, and stand for plain
 * edits. `together` holds several of both that are done as one.
 */
import { z } from '../piece/schema/zod.ts';
import { buttonKinds } from './kinds/buttons.ts';
import { clipKinds, clipShorthands } from './kinds/clips.ts';
import { keyShorthands } from './kinds/keys.ts';
import { lookKinds, lookShorthands, trackKinds } from './kinds/looks.ts';
import { patternKinds } from './kinds/patterns.ts';
import { runKinds, runShorthands } from './kinds/runs.ts';
import { wholeKinds } from './kinds/whole.ts';
import { zoneKinds } from './kinds/zones.ts';

const plainEdit = z.discriminatedUnion('kind', [
  ...wholeKinds,
  ...runKinds,
  ...zoneKinds,
  ...patternKinds,
  ...lookKinds,
  ...trackKinds,
  ...clipKinds,
  ...buttonKinds,
]);

const shorthand = z.discriminatedUnion('kind', [
  ...runShorthands,
  ...lookShorthands,
  ...clipShorthands,
  ...keyShorthands,
]);

const singleEdit = z.discriminatedUnion('kind', [...plainEdit.options, ...shorthand.options]);

/** Room for many words and two names. */
const title = z.string().min(1).max(400);

const togetherEdit = z.strictObject({
  kind: z.literal('together'),
  name: title,
  edits: z.array(singleEdit).min(1),
});

export const editSchema = z.discriminatedUnion('kind', [...singleEdit.options, togetherEdit]);

type ByKind<Any extends { kind: string }> = {
  [Kind in Any['kind']]: Readonly<Extract<Any, { kind: Kind }>>;
};

export type PlainEdit = ByKind<z.output<typeof plainEdit>>[PlainKind];
export type Shorthand = ByKind<z.output<typeof shorthand>>[ShorthandKind];
export type SingleEdit = PlainEdit | Shorthand;
export type Together = Readonly<z.output<typeof togetherEdit>>;
export type Edit = SingleEdit | Together;

export type PlainKind = z.output<typeof plainEdit>['kind'];
export type ShorthandKind = z.output<typeof shorthand>['kind'];
export type EditKind = Edit['kind'];
export type EditOf<Kind extends EditKind> = Extract<Edit, { readonly kind: Kind }>;

/** Every kind there is, for lists and tests. */
export const editKinds = editSchema.options.map(({ shape }) => shape.kind.value) as readonly EditKind[];

/** Several edits as one; one edit as itself. Edits that are several already are taken apart. */
export function together(name: string, edits: readonly Edit[]): Edit {
  const single = edits.flatMap((edit) => (edit.kind === 'together' ? edit.edits : [edit]));
  return single.length === 1 ? single[0]! : { kind: 'together', name, edits: single };
}
