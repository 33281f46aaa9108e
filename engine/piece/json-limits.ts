/** How much a piece file may hold: several times what the largest sensible piece needs. */
export const jsonLimits = { characters: 4_000_000, depth: 64, values: 250_000, faults: 100 } as const;
