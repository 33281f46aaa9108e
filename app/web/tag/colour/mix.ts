/** A colour between two stops, per channel on levels, as the pixels mix it. */
export function between(a: string, b: string, share: number): string {
  const channel = (hex: string, at: number) => Number.parseInt(hex.slice(1 + 2 * at, 3 + 2 * at), 16);
  const mixed = [0, 1, 2].map((at) => Math.round(channel(a, at) * (1 - share) + channel(b, at) * share));
  return `#${mixed.map((level) => level.toString(16).padStart(2, '0')).join('')}`;
}

/** `#RRGGBB`, `rrggbb` or `#rgb` as `#rrggbb`; undefined for anything else. */
export function readHex(text: string): string | undefined {
  const [, digits] = /^\s*#?([0-9a-f]{6}|[0-9a-f]{3})\s*$/i.exec(text) ?? [];
  if (digits === undefined) return undefined;
  const full = digits.length === 6 ? digits : [...digits].map((digit) => digit + digit).join('');
  return `#${full.toLowerCase()}`;
}
