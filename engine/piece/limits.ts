/** How much a piece may hold. */
export const limits = {
  pixels: 2000,
  runs: 256,
  looks: 64,
  tracksPerLook: 64,
  clips: 1024,
  zones: 256,
  zoneNesting: 8,
  patterns: 64,
  patternBytes: 8192,
  parametersPerPattern: 32,
  keysPerParameter: 64,
  gradientStops: 16,
  buttons: 8,
  lookMilliseconds: 9 * 3600 * 1000,
  fadeMilliseconds: 3600 * 1000,
  dissolveMilliseconds: 60_000,
} as const;
