/** Rows of a list that is put in order by dragging. */

interface Row {
  readonly top: number;
  readonly bottom: number;
}

/** The row at a height of the window; the first above all of them, the last below. */
export function indexAt(rows: readonly Row[], y: number): number {
  const passed = rows.filter(({ bottom }) => bottom <= y).length;
  return Math.min(passed, rows.length - 1);
}
