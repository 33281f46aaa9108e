/**
 * Pins of the ATmega328P by the digital numbers that boards with this chip use.
 *
 * Source: pin configurations of the ATmega328P datasheet for the port letters and bits; the numbering
 * 0-13 and 14-19 (A0-A5) is common practice on such boards, no source.
 */

export interface ChipPin {
  readonly number: number;
  /** As printed on boards, where that differs from the number. */
  readonly label: string;
  readonly port: 'B' | 'C' | 'D';
  readonly bit: number;
  /** Why a maker may want another pin first. */
  readonly caution?: string;
}

const cautions: Readonly<Record<number, string>> = {
  0: 'carries the serial line to the computer: data on it disturbs loading a sketch',
  1: 'carries the serial line to the computer: data on it disturbs loading a sketch',
  13: 'has a lamp on most boards, which loads it',
};

export const atmega328pPins: readonly ChipPin[] = [
  ...pinsOfPort('D', 0, 8),
  ...pinsOfPort('B', 8, 6),
  ...pinsOfPort('C', 14, 6),
];

function pinsOfPort(port: ChipPin['port'], first: number, count: number): ChipPin[] {
  return Array.from({ length: count }, (_, bit) => {
    const number = first + bit;
    const caution = cautions[number];
    const label = port === 'C' ? `A${bit}` : String(number);
    return { number, label, port, bit, ...(caution === undefined ? {} : { caution }) };
  });
}
