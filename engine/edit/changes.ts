/** Some fields of a thing with their new values: what a `set-` edit holds. */
import { z } from '../piece/schema/zod.ts';

/** Fields that are left out stay as they are; null takes a field away that need not be there. */
export type Changes<Item, Field extends keyof Item = keyof Item> = {
  [Key in Field]?: undefined extends Item[Key] ? Exclude<Item[Key], undefined> | null : Item[Key];
};

/** Changes of the named fields, each with the bounds that the piece file has for it. */
export function changesOf<Schema extends z.ZodObject, Field extends keyof z.output<Schema> & string>(
  schema: Schema,
  fields: readonly Field[],
): z.ZodType<Changes<z.output<Schema>, Field>> {
  const shape = fields.map((field) => [field, changeOf(schema.shape[field] as z.ZodType)] as const);
  return z.strictObject(Object.fromEntries(shape)) as unknown as z.ZodType<Changes<z.output<Schema>, Field>>;
}

/** Without its default: what an edit leaves out is not to change. */
function changeOf(field: z.ZodType): z.ZodType {
  if (field instanceof z.ZodDefault || field instanceof z.ZodPrefault) {
    return (field.unwrap() as z.ZodType).optional();
  }
  return field instanceof z.ZodOptional
    ? (field.unwrap() as z.ZodType).nullable().optional()
    : field.optional();
}

/**
 * The thing after its changes, with its fields in the order of the schema: the same piece is then the
 * same text, whatever was taken away and put back.
 */
export function changed<Item extends object>(schema: z.ZodObject, item: Item, set: Changes<Item>): Item {
  const values: Record<string, unknown> = { ...item, ...set };
  const fields = Object.keys(schema.shape)
    .map((field) => [field, values[field]] as const)
    .filter(([, value]) => value !== undefined && value !== null);
  return Object.fromEntries(fields) as Item;
}

/** The changes that take these back: the same fields, as they are now. */
export function formerly<Item extends object, Field extends keyof Item>(
  item: Item,
  set: Changes<Item, Field>,
): Changes<Item, Field> {
  const fields = Object.keys(set) as Field[];
  return Object.fromEntries(fields.map((field) => [field, item[field] ?? null])) as Changes<Item, Field>;
}
