/** Tables in program memory: each content once, whoever asks for it. */
import type { Names } from '../names.ts';
import { commentLines, rows } from './text.ts';

export type ElementType = 'uint8_t' | 'int16_t' | 'uint16_t' | 'int32_t' | 'uint32_t';

export const elementBytes: Record<ElementType, number> = {
  uint8_t: 1,
  int16_t: 2,
  uint16_t: 2,
  int32_t: 4,
  uint32_t: 4,
};

interface TableHead {
  /** First word of the identifier: `easing`, `places`. */
  readonly prefix: string;
  /** Whose table it is; the identifier is made from it. */
  readonly name: string;
  /** Entries a line; as many as fit where it is left out. */
  readonly perLine?: number;
  /** One sentence for the reader. */
  readonly comment: string;
}

export interface TableRequest extends TableHead {
  readonly type: ElementType;
  readonly values: ArrayLike<number>;
}

export interface RowsRequest extends TableHead {
  readonly type: string;
  readonly entries: readonly string[];
  /** In program memory. */
  readonly bytes: number;
}

/** Collects the tables of one sketch in the order of their first use. */
export class Tables {
  private readonly names: Names;
  private readonly identifiers = new Map<string, string>();
  private readonly counts = new Map<string, number>();
  private readonly texts: string[] = [];
  /** Of all tables together, with two bytes a pointer. */
  bytes = 0;

  constructor(names: Names) {
    this.names = names;
  }

  /** @returns the identifier of the table with these values */
  take({ type, values, ...request }: TableRequest): string {
    return this.takeRows({
      ...request,
      type,
      entries: Array.from(values, String),
      bytes: values.length * elementBytes[type],
    });
  }

  /** The same for entries that are C++ already, of any type. */
  takeRows({ prefix, name, type, entries, bytes, perLine, comment }: RowsRequest): string {
    const content = [type, prefix, ...entries].join(' ');
    const known = this.identifiers.get(content);
    if (known !== undefined) return known;
    const number = (this.counts.get(prefix) ?? 0) + 1;
    this.counts.set(prefix, number);
    const identifier = this.names.take(prefix, name, number);
    this.identifiers.set(content, identifier);
    this.bytes += bytes;
    const lines = [
      ...commentLines(comment),
      `static const ${type} ${identifier}[] IN_FLASH = {`,
      rows(entries, perLine),
      '};',
    ];
    this.texts.push(`${lines.join('\n')}\n`);
    return identifier;
  }

  text(): string {
    return this.texts.join('\n');
  }
}
