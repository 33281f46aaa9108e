/** The benches of the workshop that are set up so far, in the order of the job. */
export const benches = [
  { name: 'place', title: 'Place' },
  { name: 'compose', title: 'Compose' },
  { name: 'firmware', title: 'Firmware' },
] as const;
export type BenchName = (typeof benches)[number]['name'];
