/**
 * JSON by RFC 8259, read without recursion: a file from a stranger cannot exhaust the stack, and an
 * error has its line and column whatever the JavaScript engine. Stricter in two points, where the
 * standard leaves the choice to the reader: no key twice in one object, and no key `__proto__`.
 */
import type { Checked, Diagnostic } from '../diagnostic.ts';
import { type FaultName, faultDiagnostic } from './json-faults.ts';
import { jsonLimits } from './json-limits.ts';
import { type JsonPlaces, TextLines } from './places.ts';
import { clipped } from './wording.ts';

export interface JsonText {
  readonly value: unknown;
  readonly places: JsonPlaces;
}

/** A whole JSON text as a value, and where each part of it stands; or what is wrong with it. */
export function readJson(text: string): Checked<JsonText> {
  return new JsonReader(text).read();
}

/** A container whose end has not been read yet. */
interface Open {
  readonly container: unknown[] | Record<string, unknown>;
  readonly children: Map<string | number, readonly [start: number, end: number]>;
  readonly start: number;
  readonly isList: boolean;
  /** Under which the next value will stand; undefined for a value that is left out. */
  key: string | number | undefined;
  childStart: number;
}

/** Stands for a container whose first child comes next. */
const opened = Symbol('opened');

const space = /[ \t\n\r]*/y;
const number = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: exactly these need an escape in JSON
const plain = /[^"\\\u0000-\u001f]*/y;
const escapeSequence = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const word = /[\p{L}_$][\p{L}\p{N}_$]*/uy;

const literals: ReadonlyMap<string, boolean | null> = new Map([
  ['true', true],
  ['false', false],
  ['null', null],
]);
const escapes: Readonly<Record<string, string>> = { b: '\b', f: '\f', n: '\n', r: '\r', t: '\t' };

/** What stands where a value should, by its first character. */
const misplaced: Readonly<Record<string, FaultName>> = {
  '': 'ends-early',
  ']': 'value-missing',
  '}': 'value-missing',
  "'": 'single-quotes',
  '/': 'comment',
  '#': 'comment',
};

class JsonReader {
  private position = 0;
  private values = 0;
  private halted = false;
  private readonly stack: Open[] = [];
  private readonly places: JsonPlaces = new Map();
  private readonly faults: Diagnostic[] = [];
  private readonly lines: TextLines;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
    this.lines = new TextLines(text);
  }

  read(): Checked<JsonText> {
    if (this.text.length > jsonLimits.characters) this.halt(0, 'too-many-characters', jsonLimits.characters);
    // A byte order mark is no JSON, but editors write one and RFC 8259 lets a reader skip it.
    if (this.text.startsWith('\ufeff')) this.position = 1;
    const value = this.halted ? undefined : this.document();
    if (this.faults.length > 0) return { diagnostics: this.faults };
    return { value: { value, places: this.places }, diagnostics: [] };
  }

  private document(): unknown {
    while (!this.halted) {
      let value = this.beginValue();
      while (value !== opened && !this.halted) {
        const around = this.stack.at(-1);
        if (around === undefined) {
          this.skipSpace();
          if (this.position < this.text.length) this.halt(this.position, 'behind-the-end');
          return value;
        }
        this.keep(around, value);
        if (this.anotherFollows(around)) break;
        this.stack.pop();
        value = around.container;
      }
    }
    return undefined;
  }

  /** A scalar or an empty container as it is, or `opened` in front of the first child. */
  private beginValue(): unknown {
    this.skipSpace();
    const start = this.position;
    const around = this.stack.at(-1);
    if (around !== undefined) around.childStart = start;
    this.values += 1;
    if (this.values > jsonLimits.values) return this.halt(start, 'too-many-values', jsonLimits.values);
    const first = this.text[start] ?? '';
    if (first === '"') return this.string();
    if (first === '[' || first === '{') return this.beginContainer(first === '[');
    const digits = this.take(number);
    if (digits !== '') return Number(digits);
    const name = this.take(word);
    const literal = literals.get(name);
    if (literal !== undefined) return literal;
    if (name !== '') return this.halt(start, 'unknown-word', clipped(name));
    return this.halt(start, misplaced[first] ?? 'value-expected');
  }

  private beginContainer(isList: boolean): unknown {
    const start = this.position;
    if (this.stack.length >= jsonLimits.depth) return this.halt(start, 'too-deep', jsonLimits.depth);
    const container = isList ? [] : {};
    const open: Open = { container, children: new Map(), start, isList, key: 0, childStart: start };
    this.places.set(container, open.children);
    this.position += 1;
    this.skipSpace();
    if (this.text[this.position] === closing(open)) {
      this.position += 1;
      return container;
    }
    this.stack.push(open);
    if (!isList) this.key(open);
    return opened;
  }

  /** Reads `"name":` and remembers the name for the value behind it. */
  private key(open: Open): void {
    this.skipSpace();
    const start = this.position;
    if (this.text[start] !== '"') {
      this.halt(start, this.text[start] === '}' ? 'comma-before-brace' : 'key-expected');
      return;
    }
    const name = this.string();
    if (name === undefined) return;
    const fault = name === '__proto__' ? 'key-forbidden' : open.children.has(name) ? 'key-twice' : undefined;
    if (fault !== undefined) this.report(start, fault, clipped(name));
    open.key = fault === undefined ? name : undefined;
    this.skipSpace();
    if (this.text[this.position] === ':') this.position += 1;
    else this.halt(this.position, 'colon-expected');
  }

  private keep(around: Open, value: unknown): void {
    if (around.key === undefined) return;
    around.children.set(around.key, [around.childStart, this.position]);
    (around.container as Record<string | number, unknown>)[around.key] = value;
  }

  /** Behind a child: passes the comma, or the bracket that closes the container. */
  private anotherFollows(around: Open): boolean {
    this.skipSpace();
    const next = this.text[this.position];
    if (next === ',') {
      this.position += 1;
      if (typeof around.key === 'number') around.key += 1;
      else this.key(around);
      return true;
    }
    if (next === closing(around)) {
      this.position += 1;
    } else if (next === undefined) {
      const { line } = this.lines.span(around.start, around.start);
      this.halt(this.position, 'left-open', `the bracket of line ${line}`);
    } else {
      this.halt(this.position, 'comma-expected', closing(around));
    }
    return false;
  }

  private string(): string | undefined {
    const start = this.position;
    this.position += 1;
    let value = '';
    while (!this.halted) {
      value += this.take(plain);
      const next = this.text[this.position];
      if (next === '"') {
        this.position += 1;
        return value;
      }
      if (next === '\\') value += this.escape();
      else if (next === undefined || next === '\n' || next === '\r') this.halt(start, 'unclosed-text');
      else this.halt(this.position, 'control-character');
    }
    return undefined;
  }

  private escape(): string {
    const sequence = this.take(escapeSequence);
    if (sequence === '') this.halt(this.position, 'unknown-escape');
    if (sequence[1] === 'u') return String.fromCharCode(Number.parseInt(sequence.slice(2), 16));
    return escapes[sequence[1] ?? ''] ?? sequence.slice(1);
  }

  private skipSpace(): void {
    this.take(space);
  }

  /** Passes what the pattern matches at this point, which may be nothing. */
  private take(pattern: RegExp): string {
    pattern.lastIndex = this.position;
    const match = pattern.exec(this.text)?.[0] ?? '';
    this.position += match.length;
    return match;
  }

  /** For what is wrong, but lets the reader go on. */
  private report(start: number, fault: FaultName, shown: string | number = ''): void {
    if (this.faults.length >= jsonLimits.faults) return;
    const span = this.lines.span(start, Math.min(start + 1, this.text.length));
    this.faults.push(faultDiagnostic(fault, span, String(shown)));
  }

  /** For what makes the rest unreadable. */
  private halt(start: number, fault: FaultName, shown: string | number = ''): undefined {
    this.report(start, fault, shown);
    this.halted = true;
    return undefined;
  }
}

function closing({ isList }: Open): ']' | '}' {
  return isList ? ']' : '}';
}
