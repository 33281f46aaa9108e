/** A parameter of a clip that changes over the clip's time. */
export interface KeyedParameter {
  readonly name: string;
  readonly keys: readonly {
    readonly atMilliseconds: number;
    /** Q16.16; for a colour channel the level 0..255 times 65536. */
    readonly value: number;
    /** 65 entries in 16.16; governs the way to the next key. */
    readonly easing: Int32Array;
  }[];
  /** Q16.16 bounds: an easing may overshoot, the parameter may not. */
  readonly min: number;
  readonly max: number;
  /** What the value becomes for the pattern: Q16.16 as it is, Q2.14, whole number, or colour level to Q2.14. */
  readonly to: 'mediump' | 'lowp' | 'whole' | 'level';
}
