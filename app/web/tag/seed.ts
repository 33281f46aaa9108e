/** 65536 by the golden ratio, made odd: a walk by this step comes by all seeds before it comes back. */
const step = 40_503;

/** Another seed, far from this one. */
export function nextSeed(seed: number): number {
  return (seed + step) % 65_536;
}

/** Whether a pattern leaves anything to chance that a seed would change. */
export function readsSeed(source: string): boolean {
  return /\bseed\b/.test(source.replace(/\/\/.*|\/\*[\s\S]*?\*\//g, ''));
}
