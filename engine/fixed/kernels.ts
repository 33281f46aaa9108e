/**
 * Operations too large for one line of code: each defined once, as integers in and integers out.
 * The preview calls these very functions; the code generator prints their C++ twins, which tests
 * compare with them bit for bit.
 */
import { angle } from './kernels/angle.ts';
import { hash, hash2 } from './kernels/hash.ts';
import type { Kernel } from './kernels/kernel.ts';
import { length2, length3 } from './kernels/length.ts';
import { exp2, log2 } from './kernels/power.ts';
import { root, rootMedium } from './kernels/root.ts';
import { sine } from './kernels/sine.ts';
import { soft } from './kernels/soft.ts';

export const kernels = {
  sine,
  soft,
  root,
  rootMedium,
  length2,
  length3,
  exp2,
  log2,
  angle,
  hash,
  hash2,
} as const satisfies Record<string, Kernel>;

export type KernelName = keyof typeof kernels;
export const kernelNames = Object.keys(kernels) as KernelName[];
