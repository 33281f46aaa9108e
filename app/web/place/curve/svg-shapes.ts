/** Basic shapes of SVG as path data: their "equivalent path" in SVG 2, chapter 10. User units, y down. */

type Read = (name: string) => string | null;

/** Path data of an element; undefined for elements that draw no line, empty where a shape is not drawn. */
export function pathDataOf(tag: string, read: Read): string | undefined {
  return Object.hasOwn(shapes, tag) ? shapes[tag]!(read) : undefined;
}

const number = (read: Read, name: string) => {
  const value = Number.parseFloat(read(name) ?? '');
  return Number.isFinite(value) ? value : undefined;
};

const shapes: Readonly<Record<string, (read: Read) => string>> = {
  path: (read) => read('d') ?? '',

  line(read) {
    const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map((name) => number(read, name) ?? 0);
    return `M${x1} ${y1}L${x2} ${y2}`;
  },

  polyline: (read) => throughPoints(read('points')),
  polygon: (read) => closed(throughPoints(read('points'))),

  circle(read) {
    const r = number(read, 'r') ?? 0;
    return ellipse(number(read, 'cx') ?? 0, number(read, 'cy') ?? 0, r, r);
  },

  ellipse(read) {
    const rx = number(read, 'rx');
    const ry = number(read, 'ry');
    return ellipse(number(read, 'cx') ?? 0, number(read, 'cy') ?? 0, rx ?? ry ?? 0, ry ?? rx ?? 0);
  },

  rect(read) {
    const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((name) => number(read, name) ?? 0) as [
      number,
      number,
      number,
      number,
    ];
    if (!(width > 0 && height > 0)) return '';
    const roundX = number(read, 'rx');
    const roundY = number(read, 'ry');
    const rx = Math.min(Math.max(0, roundX ?? roundY ?? 0), width / 2);
    const ry = Math.min(Math.max(0, roundY ?? roundX ?? 0), height / 2);
    if (rx === 0 || ry === 0) return `M${x} ${y}H${x + width}V${y + height}H${x}Z`;
    const arc = (toX: number, toY: number) => `A${rx} ${ry} 0 0 1 ${toX} ${toY}`;
    return [
      `M${x + rx} ${y}H${x + width - rx}`,
      `${arc(x + width, y + ry)}V${y + height - ry}`,
      `${arc(x + width - rx, y + height)}H${x + rx}`,
      `${arc(x, y + height - ry)}V${y + ry}${arc(x + rx, y)}Z`,
    ].join('');
  },
};

/** Four quarters, from three o'clock on, clockwise on the screen. */
function ellipse(cx: number, cy: number, rx: number, ry: number): string {
  if (!(rx > 0 && ry > 0)) return '';
  const arc = (x: number, y: number) => `A${rx} ${ry} 0 0 1 ${x} ${y}`;
  return `M${cx + rx} ${cy}${arc(cx, cy + ry)}${arc(cx - rx, cy)}${arc(cx, cy - ry)}${arc(cx + rx, cy)}Z`;
}

/** Points come in pairs; a half one at the end is left out. */
function throughPoints(text: string | null): string {
  const numbers = (text ?? '').match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi) ?? [];
  const pairs = Array.from({ length: Math.floor(numbers.length / 2) }, (_, i) =>
    numbers.slice(2 * i, 2 * i + 2),
  );
  return pairs.map((pair, i) => `${i === 0 ? 'M' : 'L'}${pair.join(' ')}`).join('');
}

function closed(data: string): string {
  return data === '' ? '' : `${data}Z`;
}
