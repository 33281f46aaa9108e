/** Views of the buffers that draw programs write to, made once for each buffer. */
const wordsOf = new WeakMap<Uint8Array, Uint32Array>();

/**
 * Gives every pixel the same three levels. Twelve bytes are four pixels or three words, and storing by words
 * takes a quarter of the time, which is all that a pattern of one colour costs.
 */
export function fillPixels(out: Uint8Array, red: number, green: number, blue: number): void {
  const byWords = out.byteOffset % 4 === 0 && out.length >= 12;
  const wholeBytes = byWords ? out.length - (out.length % 12) : 0;
  fillBytes(out, 0, Math.min(12, wholeBytes), red, green, blue);
  if (byWords) repeatWords(viewOf(out), wholeBytes / 4);
  fillBytes(out, wholeBytes, out.length, red, green, blue);
}

function viewOf(out: Uint8Array): Uint32Array {
  let words = wordsOf.get(out);
  if (words === undefined) {
    words = new Uint32Array(out.buffer, out.byteOffset, Math.floor(out.length / 4));
    wordsOf.set(out, words);
  }
  return words;
}

function fillBytes(
  out: Uint8Array,
  from: number,
  end: number,
  red: number,
  green: number,
  blue: number,
): void {
  for (let to = from; to < end; to += 3) {
    out[to] = red;
    out[to + 1] = green;
    out[to + 2] = blue;
  }
}

/** The first three words over and over, up to `end`. */
function repeatWords(words: Uint32Array, end: number): void {
  const [first, second, third] = [words[0]!, words[1]!, words[2]!];
  for (let to = 3; to < end; to += 3) {
    words[to] = first;
    words[to + 1] = second;
    words[to + 2] = third;
  }
}
