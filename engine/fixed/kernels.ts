/** Operations too large for one line of code: each defined once, as integers in and integers out. */
export const kernelNames = ['sine', 'root', 'rootMedium', 'length2', 'length3', 'exp2', 'log2', 'angle', 'hash', 'hash2'] as const;
export type KernelName = (typeof kernelNames)[number];
