/** Lists with one thing put in, taken out, moved or replaced; the lists themselves never change. */

export function inserted<T>(list: readonly T[], index: number, item: T): T[] {
  return [...list.slice(0, index), item, ...list.slice(index)];
}

export function without<T>(list: readonly T[], index: number): T[] {
  return [...list.slice(0, index), ...list.slice(index + 1)];
}

export function replaced<T>(list: readonly T[], index: number, item: T): T[] {
  return list.map((other, i) => (i === index ? item : other));
}

/** `to` counts in the list without the thing, so that it is the index at which it then stands. */
export function moved<T>(list: readonly T[], from: number, to: number): T[] {
  return inserted(without(list, from), to, list[from]!);
}

/** The list with each item changed, or the very same one where no item is. */
export function mapShared<T>(list: T[], change: (item: T, index: number) => T): T[] {
  const changed = list.map(change);
  return changed.every((item, i) => item === list[i]) ? list : changed;
}
