/**
 * The usual cautions of wearable light, as data: the sketch, the page and the build sheet show the same.
 *
 * They remind and do not instruct: local codes and licensed practice come first, everywhere.
 */
import type { Source } from '../parts/figure.ts';
import type { Piece } from '../piece/schema.ts';

export interface Caution {
  /** Stable, kebab-case. */
  readonly code: string;
  /** For whom it is meant, as a clause: "where ...", or "always". */
  readonly when: string;
  /** Whether a piece may be concerned, going by what its file tells; in doubt it is. */
  readonly concerns: (piece: Piece) => boolean;
  /** One line, for the head of a sketch. */
  readonly short: string;
  /** A few sentences, for the page and the build sheet. */
  readonly text: string;
  readonly sources: readonly Source[];
}

/** Stands with the cautions wherever they are shown. */
export const deference =
  'These cautions are reminders and no instructions. Local codes and licensed practice come first; ask ' +
  'a qualified person where you are not sure.';

const always = () => true;

export const cautions: readonly Caution[] = [
  {
    code: 'lithium-cells',
    when: 'where the piece runs from lithium cells',
    // A file tells volts and a limit, but not where they come from.
    concerns: always,
    short: 'Lithium cells: protected packs only, with a fuse; never charge them worn, hot, frozen or alone.',
    text:
      'Use protected cells or a finished power bank. Never charge while the piece is worn or nobody is there, ' +
      'nor below 0 C or above 45 C. Do not bend, crush or pierce a cell; take a swollen or dented one out ' +
      'of use. Let the wearer reach the battery and pull it out at once.',
    sources: [
      { about: 'charging from 0 to 45 C', from: 'datasheets of single lithium cells', verified: 'primary' },
      { about: 'the rest', from: 'common practice, no source', verified: 'memory' },
    ],
  },
  {
    code: 'short-circuit',
    when: 'always',
    concerns: always,
    short: 'Short circuits: put a fuse at the battery, below what the thinnest wire carries.',
    text:
      'A short circuit in a costume heats wire until cloth burns. Put a fuse next to the battery, rated below ' +
      'what the thinnest wire behind it carries. Insulate every joint, relieve it from pull, and look for ' +
      'broken strands before each night.',
    sources: [{ about: 'fuse below the wire', from: 'common guidance of fuse makers', verified: 'memory' }],
  },
  {
    code: 'heat',
    when: 'always',
    concerns: always,
    short: 'Heat: what touches skin stays below 43 C; feel pixels, converter and battery after half an hour.',
    text:
      'Pixels, converters and batteries get warm, and more so under cloth. What touches skin for long should ' +
      'stay below about 43 C. Run the brightest look for half an hour on the bench, feel every part, and keep ' +
      'air, not padding, around what is warm.',
    sources: [
      { about: '43 C for long contact', from: 'family of ISO 13732-1', verified: 'memory' },
      { about: 'the rest', from: 'common practice, no source', verified: 'memory' },
    ],
  },
  {
    code: 'flashing-light',
    when: 'always',
    concerns: always,
    short: 'Flashing: no more than three flashes a second; faster flashing can set off seizures.',
    text:
      'Flashing light can set off seizures in people who watch, and few of them know beforehand. Keep to at most ' +
      'three flashes in any one second, red ones above all, and announce flashing light at the door.',
    sources: [
      {
        about:
          'three flashes in any one second; a chest panel fills more of the view than the small-area exception allows',
        from: 'WCAG 2.2, success criterion 2.3.1',
        verified: 'primary',
      },
    ],
  },
  {
    code: 'water',
    when: 'near water, in rain, and where the wearer sweats',
    concerns: always,
    short: 'Water: keep batteries and joints dry and high; a coated strip is no diving suit.',
    text:
      'Rain, sweat and river water make short circuits and eat copper. Keep battery, converter and joints high ' +
      'and enclosed. Coated strips bear splashes; only what is rated for immersion bears that, and cut ends ' +
      'never do. Switch off and take out the battery when the piece gets wet.',
    sources: [
      { about: 'classes of protection', from: 'IEC 60529, by summaries of it', verified: 'secondary' },
    ],
  },
  {
    code: 'hot-glue',
    when: 'where the piece is glued',
    concerns: always,
    short: 'Hot glue: it burns skin, softens on warm parts and is no insulation.',
    text:
      'Hot glue burns skin when it is fresh and softens again on warm parts. Do not count on it as insulation ' +
      'or as the only hold of a battery or a joint.',
    sources: [{ about: 'all of it', from: 'common practice, no source', verified: 'memory' }],
  },
  {
    code: 'strong-current',
    when: 'above 3 A',
    concerns: (piece) => piece.supply.limitMilliamps > 3000,
    short: 'Current above 3 A: have the supply and the wiring looked over by a qualified person.',
    text:
      'More than 3 A is more than usual USB supplies give, and thin wire and small connectors get hot with it. ' +
      'Feed the line at several points, and have supply, fuse and wiring looked over by a qualified person.',
    sources: [
      {
        about: '3 A, the most a USB-C port offers at 5 V',
        from: 'USB Type-C, by summaries of it',
        verified: 'secondary',
      },
    ],
  },
];

/** The cautions that concern a piece, in the order in which they are shown. */
export function cautionsFor(piece: Piece): readonly Caution[] {
  return cautions.filter((caution) => caution.concerns(piece));
}
