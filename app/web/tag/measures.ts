/** How the figures of the tag are written, and read again as people type them. */

export interface Measure {
  /** With its unit, and exact to the fifth digit. */
  text(value: number): string;
  /** Undefined for what is no figure of this kind. The unit may be left out, a comma is a point. */
  read(text: string): number | undefined;
}

const figure = /^\s*([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*(.*?)\s*$/u;

/** Sixteen bits behind the point are a little less than five digits. */
export function exact(value: number): string {
  return String(Number(value.toFixed(5)));
}

/** The figure at the start of a text, and the words behind it. */
function split(text: string): { value: number; rest: string } | undefined {
  const [, digits, rest] = figure.exec(text) ?? [];
  return digits === undefined ? undefined : { value: Number(digits.replace(',', '.')), rest: rest! };
}

export function plainMeasure(unit = ''): Measure {
  return {
    text: (value) => (unit === '' ? exact(value) : `${exact(value)} ${unit}`),
    read(text) {
      const found = split(text);
      return found === undefined || !isUnit(found.rest, unit) ? undefined : found.value;
    },
  };
}

/** A byte, as a share of full. */
export const byteShare: Measure = {
  text: (value) => `${Number(((value * 100) / 255).toFixed(1))} %`,
  read(text) {
    const found = split(text);
    return found === undefined || !isUnit(found.rest, '%')
      ? undefined
      : Math.round((found.value * 255) / 100);
  },
};

/** 0..1 as a share of full. */
export const share: Measure = {
  text: (value) => `${Number((value * 100).toFixed(1))} %`,
  read(text) {
    const found = split(text);
    return found === undefined || !isUnit(found.rest, '%') ? undefined : found.value / 100;
  },
};

function isUnit(rest: string, unit: string): boolean {
  return rest === '' || rest.toLowerCase() === unit.toLowerCase();
}

const milliseconds: Readonly<Record<string, number>> = { ms: 1, s: 1000, min: 60_000, h: 3_600_000 };

/** Whole milliseconds: `3.7 s`, `350 ms`, `2 min 5 s`, `1:30`; a bare figure is seconds. */
export const time: Measure = {
  text(value) {
    const hours = Math.floor(value / 3_600_000);
    const minutes = Math.floor(value / 60_000) % 60;
    const seconds = exact((value % 60_000) / 1000);
    const parts = [
      hours > 0 ? `${hours} h` : '',
      minutes > 0 ? `${minutes} min` : '',
      seconds !== '0' || value < 60_000 ? `${seconds} s` : '',
    ];
    return parts.filter((part) => part !== '').join(' ');
  },
  read(text) {
    const clock = /^\s*(?:(\d+):)?(\d+):(\d{2}(?:[.,]\d*)?)\s*$/.exec(text);
    if (clock !== null) {
      const [, hours = '0', minutes, seconds] = clock;
      const whole = (Number(hours) * 60 + Number(minutes)) * 60;
      return Math.round((whole + Number(seconds!.replace(',', '.'))) * 1000);
    }
    let rest = text;
    let sum = 0;
    do {
      const found = split(rest);
      if (found === undefined) return undefined;
      const [, word = '', more = ''] = /^([a-z]*)\s*(.*)$/i.exec(found.rest) ?? [];
      const factor = milliseconds[word === '' ? 's' : word.toLowerCase()];
      if (factor === undefined || (word === '' && more !== '')) return undefined;
      sum += found.value * factor;
      rest = more;
    } while (rest !== '');
    return Math.round(sum);
  },
};
