/** Text in columns. */

export type Alignment = 'left' | 'right';

/** Rows of cells, each column as wide as its widest cell, two spaces apart. No spaces at the end of a line. */
export function columns(rows: readonly (readonly string[])[], alignments: readonly Alignment[]): string {
  const widths = alignments.map((_, column) => Math.max(0, ...rows.map((row) => width(row[column] ?? ''))));
  return rows
    .map((row) => {
      const cells = alignments.map((alignment, column) => {
        const text = row[column] ?? '';
        const space = ' '.repeat(widths[column]! - width(text));
        return alignment === 'right' ? space + text : text + space;
      });
      return `${cells.join('  ').trimEnd()}\n`;
    })
    .join('');
}

/** Characters rather than UTF-16 units; near enough for names. */
function width(text: string): number {
  return [...text.replace(/\p{M}/gu, '')].length;
}

export function milliamps(value: number): string {
  return value.toFixed(1);
}
