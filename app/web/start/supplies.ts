/** What pieces run from, and what it is taken to give until the maker says otherwise. */
import { powerBankThresholdMilliamps } from '../../../engine/power/warnings.ts';

export const supplyKinds = ['usb', 'bank', 'lithium', 'aa', 'mains'] as const;
export type SupplyKind = (typeof supplyKinds)[number];

export interface SupplyChoice {
  readonly title: string;
  /** Where the figure stands. */
  readonly printed: string;
  readonly milliamps: number;
  readonly volts: number;
  /** What a power bank must see, or it takes its load for removed. */
  readonly keepAliveMilliamps: number;
  /** Cautions by their code, to be shown right here. */
  readonly cautions: readonly string[];
}

/** A third more than the threshold of most banks. Common practice, no source. */
const keepAliveMilliamps = Math.round((powerBankThresholdMilliamps * 4) / 3);

export const supplies: Record<SupplyKind, SupplyChoice> = {
  usb: {
    title: 'USB port',
    printed: 'A plain port gives 0.5 A',
    // USB 2.0, section 7.2.1: a configured device may draw five unit loads of 100 mA.
    milliamps: 500,
    volts: 5,
    keepAliveMilliamps: 0,
    cautions: [],
  },
  bank: {
    title: 'Power bank',
    printed: 'Printed beside its outlet, after “5 V”',
    // What the smaller outlet of many banks gives. Common practice, no source.
    milliamps: 1000,
    volts: 5,
    keepAliveMilliamps,
    cautions: ['lithium-cells'],
  },
  lithium: {
    title: 'Lithium cell and 5 V converter',
    printed: 'What the converter gives at 5 V',
    // Common practice, no source.
    milliamps: 500,
    volts: 5,
    keepAliveMilliamps: 0,
    cautions: ['lithium-cells', 'short-circuit'],
  },
  aa: {
    title: 'Three AA cells',
    printed: 'Small cells tire quickly above 0.4 A',
    // Common practice, no source.
    milliamps: 400,
    volts: 4.5,
    keepAliveMilliamps: 0,
    cautions: ['short-circuit'],
  },
  mains: {
    title: 'Mains adapter, 5 V',
    printed: 'Printed on it, after “Output 5 V”',
    // A usual small adapter. Common practice, no source.
    milliamps: 2000,
    volts: 5,
    keepAliveMilliamps: 0,
    cautions: ['water'],
  },
};
