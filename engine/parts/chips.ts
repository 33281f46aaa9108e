/** Chips by part number, in the order in which they are offered. */
export const chipNames = ['atmega328p', 'attiny85', 'samd21', 'rp2040', 'esp32c3', 'host'] as const;
export type ChipName = (typeof chipNames)[number];
