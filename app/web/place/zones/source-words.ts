/** Zones in plain words. Positions are counted from 0, as everywhere on the table. */
import type { ZoneSource } from '../../../../engine/piece/schema.ts';

/** Sources within sources are told so deep; what lies deeper is only counted. */
const told = 3;

/** `rim, then strip 1`; `every 2nd of rim`; `left sleeve beside right sleeve, backwards`. */
export function sourceWords(source: ZoneSource, depth = told): string {
  if (depth === 0) return 'more';
  const inner = (of: ZoneSource) => sourceWords(of, depth - 1);
  switch (source.kind) {
    case 'all':
      return 'all pixels';
    case 'run':
      return source.run;
    case 'range':
      return source.first === source.last
        ? `${source.run} ${source.first}`
        : `${source.run} ${source.first} to ${source.last}`;
    case 'stepped': {
      const from = source.offset === 0 ? '' : `, from ${source.offset} on`;
      return source.every === 1
        ? `${inner(source.of)}${from}`
        : `every ${ordinal(source.every)} of ${inner(source.of)}${from}`;
    }
    case 'reversed':
      return `${inner(source.of)}, backwards`;
    case 'union':
      return listed(source.of.map(inner), ', then ');
    case 'twins':
      return listed(source.of.map(inner), ' beside ');
  }
}

/** Longer lists are told by their first parts and a number. */
const mostParts = 4;

function listed(parts: readonly string[], joint: string): string {
  if (parts.length <= mostParts) return parts.join(joint);
  return `${parts.slice(0, mostParts - 1).join(joint)} and ${parts.length - mostParts + 1} more`;
}

/** `2nd`, `3rd`, `11th`. */
export function ordinal(number: number): string {
  const teens = Math.floor((number % 100) / 10) === 1;
  const ending = teens ? 'th' : ({ 1: 'st', 2: 'nd', 3: 'rd' }[number % 10] ?? 'th');
  return `${number}${ending}`;
}
