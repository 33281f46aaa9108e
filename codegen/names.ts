/** C++ identifiers from the maker's words: readable, unique, and never a word that is taken. */

/** Letters that do not come apart into an ASCII letter and a mark (NFKD leaves them whole). */
const transliterations: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ł: 'l',
  ħ: 'h',
  ı: 'i',
};

const longestIdentifier = 40;

/** Lower-case ASCII letters, digits and single underscores; empty where nothing of the name is left. */
export function transliterate(name: string): string {
  const plain = name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/\P{ASCII}/gu, (letter) => transliterations[letter] ?? '_');
  return plain.replace(/[^a-z0-9]+/g, '_').replace(/^_|_$/g, '');
}

/**
 * Hands out identifiers for one sketch, each once. A name that leaves nothing (`☾`) becomes its number:
 * `look_3`; one that is taken gets a number too: `look_embers_2`.
 */
export class Names {
  private readonly taken = new Set<string>();

  /** @param number position of the thing named, from 1 */
  take(prefix: string, name: string, number: number): string {
    const wanted = transliterate(name) || String(number);
    const base = `${prefix}_${wanted}`.slice(0, longestIdentifier).replace(/_$/, '');
    let free = base;
    for (let copy = 2; this.taken.has(free) || isReserved(free); copy++) free = `${base}_${copy}`;
    this.taken.add(free);
    return free;
  }
}

/** Whether an identifier means something already: to C++, to a sketch core, or to the headers of a chip. */
export function isReserved(identifier: string): boolean {
  return (
    reserved.has(identifier) ||
    /__|^_/.test(identifier) ||
    // Registers, bits and constants of chip headers: no list of them is complete, so no all-capital word is free.
    /^[A-Z][A-Z0-9_]*$/.test(identifier)
  );
}

const words = (text: string): string[] => text.trim().split(/\s+/);

const reserved: ReadonlySet<string> = new Set([
  // Keywords and alternative tokens: ISO/IEC 14882:2011, tables 4 and 5, and what later editions added.
  ...words(`alignas alignof and and_eq asm auto bitand bitor bool break case catch char char16_t char32_t char8_t
    class co_await co_return co_yield compl concept const const_cast consteval constexpr constinit continue
    decltype default delete do double dynamic_cast else enum explicit export extern false final float for
    friend goto if import inline int long module mutable namespace new noexcept not not_eq nullptr operator
    or or_eq override private protected public register reinterpret_cast requires return short signed sizeof
    static static_assert static_cast struct switch template this thread_local throw true try typedef typeid
    typename union unsigned using virtual void volatile wchar_t while xor xor_eq typeof linux unix i386`),
  // Macros, types and functions that usual sketch cores bring: common practice, no source.
  ...words(`abs min max round constrain radians degrees sq bit word boolean byte setup loop millis micros delay
    delayMicroseconds pinMode digitalRead digitalWrite analogRead analogWrite analogReference shiftIn shiftOut
    pulseIn tone noTone random randomSeed map interrupts noInterrupts attachInterrupt detachInterrupt lowByte
    highByte bitRead bitWrite bitSet bitClear bitToggle digitalPinToPort digitalPinToBitMask
    portOutputRegister portInputRegister portModeRegister yield main init`),
  // The C library's functions that come with almost every header.
  ...words(`sin cos tan asin acos atan atan2 exp log log10 pow sqrt ceil floor fabs fmod labs div ldiv hypot
    signal time clock index rindex read write open close stdin stdout stderr printf puts malloc free exit abort
    memcpy memset strlen log2 exp2 cbrt trunc lrint y0 y1 yn j0 j1 jn gamma`),
]);
