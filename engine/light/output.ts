/** From levels to drive: tables and factors of the output stage of one piece. */
export interface OutputStage {
  /** Light of each level: round(65280 * Y(i / 255)), 256 entries. */
  readonly gamma: Uint16Array;
  /** Balance of red, green, blue (and white), 0..256. */
  readonly balance: readonly number[];
  /** 3, or 4 with white. */
  readonly channels: 3 | 4;
  /** Position in the part's data of red, green, blue (and white): drive[order[c]] is channel c. */
  readonly order: readonly number[];
  /** Lift to this drive where a frame would draw less than the keep-alive current; 0: never. */
  readonly keepAliveDrive: number;
}
