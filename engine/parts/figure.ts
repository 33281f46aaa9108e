/** Figures of parts, each with where it comes from and how far that was checked. */

/**
 * `primary`: the maker's own datasheet or manual was read.
 * `secondary`: quoted or measured by others.
 * `computed`: follows from figures that are themselves given here.
 * `memory`: nobody looked it up yet; provisional.
 */
export type Verification = 'primary' | 'secondary' | 'computed' | 'memory';

export interface Source {
  /** Which figure this is about, in a few words. */
  readonly about: string;
  readonly from: string;
  readonly verified: Verification;
}
