/** What a frame draws: milliamps = chip + n * quiescent + sum over channels of drive/255 * channel current. */
export interface CurrentModel {
  readonly pixels: number;
  /** In tenths of a milliamp, so that the limiter works in whole numbers. */
  readonly chipTenths: number;
  readonly quiescentTenths: number;
  /** Red, green, blue (and white) at full drive. */
  readonly channelTenths: readonly number[];
  readonly limitMilliamps: number;
}
