/** Words of the maker inside C++ text. Whatever they are, they stay inside their comment or string. */

/** Of comments, rules and what is broken into lines by hand. */
export const lineWidth = 104;

/** Control, format and direction characters, line separators, halves of pairs. */
const invisible = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/**
 * The text in quotation marks, for a `//` comment. The closing mark keeps a backslash from being the last
 * character of a line, where it would draw the next line into the comment.
 */
export function quoted(text: string): string {
  return `"${plain(text)}"`;
}

/** Free text for a comment, on one line. */
export function plain(text: string): string {
  return text
    .replace(invisible, ' ')
    .replace(/\?(?=\?)/g, '? ')
    .replace(/\*(?=\/)/g, '* ')
    .replace(/\\/g, '/');
}

/** A C++ string literal with the exact bytes of the text in UTF-8; only printable ASCII stands for itself. */
export function stringLiteral(text: string): string {
  let body = '';
  for (const byte of utf8(text)) {
    const stands = byte >= 0x20 && byte < 0x7f && !'"\\?'.includes(String.fromCharCode(byte));
    body += stands ? String.fromCharCode(byte) : `\\${byte.toString(8).padStart(3, '0')}`;
  }
  return `"${body}"`;
}

/** UTF-8 by RFC 3629; names hold no halves of surrogate pairs. */
export function utf8(text: string): number[] {
  const encoded = encodeURIComponent(text).replace(/%([0-9A-F]{2})/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
  return Array.from(encoded, (char) => char.charCodeAt(0));
}

/** Breaks text into `//` comment lines of at most 104 characters; `first` and `rest` stand before its lines. */
export function commentLines(text: string, first = '', rest = first): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(' ')) {
    const longer = empty ? line + word : `${line} ${word}`;
    if (empty || `// ${longer}`.length <= lineWidth) {
      line = longer;
    } else {
      lines.push(line);
      line = rest + word;
    }
    empty = false;
  }
  return [...lines, line].map((each) => `// ${each}`.trimEnd());
}

/** A section's title, as a line across the file. */
export function rule(title: string): string {
  return `// ---- ${title} `.padEnd(lineWidth, '-');
}

/** Moves the comments behind neighbouring lines to one column. */
export function alignComments(lines: readonly string[]): string[] {
  const parts = lines.map((line) => /^(.*?\S) +(\/\/ .*)$/.exec(line));
  return lines.map((line, at) => {
    const here = parts[at];
    if (here === null || here === undefined) return line;
    let first = at;
    let last = at;
    while (parts[first - 1]) first--;
    while (parts[last + 1]) last++;
    const widths = parts.slice(first, last + 1).map((each) => each![1]!.length);
    return `${here[1]!.padEnd(Math.max(...widths))}  ${here[2]}`;
  });
}

/** Entries of a table as indented lines: as many a line as fit, or as many as are asked for. */
export function rows(entries: readonly string[], perLine?: number): string {
  const longest = Math.max(...entries.map((entry) => entry.length));
  const each = perLine ?? Math.max(1, Math.floor(100 / (longest + 2)));
  const lines: string[] = [];
  for (let at = 0; at < entries.length; at += each) {
    lines.push(`  ${entries.slice(at, at + each).join(', ')},`);
  }
  return lines.join('\n');
}
