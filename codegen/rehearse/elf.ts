/**
 * Reads what a rehearsal needs of an ELF file: the bytes to load, where symbols lie and how much memory
 * is taken. Source of the layout: System V ABI, chapters 4 (object files) and 5 (program loading), 32 bit,
 * little-endian.
 */

export interface ElfSymbol {
  readonly address: number;
  readonly size: number;
}

export interface ElfFile {
  /** Bytes for the program memory, at their load addresses. */
  readonly segments: readonly { readonly address: number; readonly bytes: Uint8Array }[];
  /** By mangled name; of several local symbols with one name, the last. */
  readonly symbols: ReadonlyMap<string, ElfSymbol>;
  readonly sections: readonly ElfSection[];
}

export interface ElfSection {
  readonly name: string;
  readonly address: number;
  readonly size: number;
  /** Takes memory while the program runs. */
  readonly allocated: boolean;
  /** Has bytes in the file: unlike `.bss`, which is only set to 0. */
  readonly filled: boolean;
}

const headerOf = { programs: 28, sections: 32, programSize: 42, programCount: 44, sectionSize: 46 } as const;
const sectionCountAt = 48;
const sectionNamesAt = 50;
const loadable = 1;
const symbolTable = 2;
const emptySection = 8;
const allocatedFlag = 2;

/** Undefined if the bytes are no such file. */
export function readElf(file: Uint8Array): ElfFile | undefined {
  const magic = [0x7f, 0x45, 0x4c, 0x46, 1, 1];
  if (file.length < 52 || magic.some((byte, at) => file[at] !== byte)) return undefined;
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const word = (at: number) => view.getUint32(at, true);
  const half = (at: number) => view.getUint16(at, true);
  const nameAt = (at: number) => {
    const end = file.indexOf(0, at);
    return new TextDecoder().decode(file.subarray(at, end));
  };

  const segments = [];
  for (let i = 0; i < half(headerOf.programCount); i++) {
    const at = word(headerOf.programs) + i * half(headerOf.programSize);
    const bytes = file.subarray(word(at + 4), word(at + 4) + word(at + 16));
    if (word(at) === loadable && bytes.length > 0) segments.push({ address: word(at + 12), bytes });
  }

  const sectionAt = (i: number) => word(headerOf.sections) + i * half(headerOf.sectionSize);
  const sectionNames = word(sectionAt(half(sectionNamesAt)) + 16);
  const sections: ElfSection[] = [];
  const symbols = new Map<string, ElfSymbol>();
  for (let i = 0; i < half(sectionCountAt); i++) {
    const at = sectionAt(i);
    const type = word(at + 4);
    const size = word(at + 20);
    sections.push({
      name: nameAt(sectionNames + word(at)),
      address: word(at + 12),
      size,
      allocated: (word(at + 8) & allocatedFlag) !== 0,
      filled: type !== emptySection,
    });
    if (type !== symbolTable) continue;
    const symbolNames = word(sectionAt(word(at + 24)) + 16);
    for (let symbol = word(at + 16); symbol < word(at + 16) + size; symbol += 16) {
      const name = nameAt(symbolNames + word(symbol));
      if (name !== '') symbols.set(name, { address: word(symbol + 4), size: word(symbol + 8) });
    }
  }
  return { segments, symbols, sections };
}
