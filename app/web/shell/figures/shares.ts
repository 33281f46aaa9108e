/** What a current is made of: the chip, the pixels at rest, and their light. Rules P of engine/SPEC.md. */
import { chips } from '../../../../engine/parts/chips.ts';
import { pixelParts } from '../../../../engine/parts/pixels.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';
import type { PieceView } from '../../worker/protocol.ts';

export interface Share {
  readonly name: string;
  /** How it comes about, such as `194 at 0.7 mA`. */
  readonly by: string;
  readonly milliamps: number;
}

const channelNames = ['red', 'green', 'blue', 'white'];

/** What the piece draws before anything shines. */
export function restShares(piece: Piece, pixels: number): readonly Share[] {
  const chip = chips[piece.board];
  const part = pixelParts[piece.lines[0]!.part];
  return [
    { name: 'the chip', by: chip.title, milliamps: chip.currentTenths / 10 },
    {
      name: 'dark pixels',
      by: `${pixels} at ${part.quiescentTenths / 10} mA`,
      milliamps: (pixels * part.quiescentTenths) / 10,
    },
  ];
}

/** The light of one frame by its colours. */
export function lightShares(
  piece: Piece,
  { order }: Pick<PieceView, 'order'>,
  drive: Uint8Array,
): readonly Share[] {
  const { channelTenths } = pixelParts[piece.lines[0]!.part];
  return order.map((place, channel) => {
    let sum = 0;
    for (let at = place; at < drive.length; at += order.length) sum += drive[at]!;
    const full = channelTenths[channel]! / 10;
    return {
      name: channelNames[channel]!,
      by: `${(sum / 255).toFixed(1)} fully lit, at ${full} mA`,
      milliamps: (sum / 255) * full,
    };
  });
}

export function totalOf(shares: readonly Share[]): number {
  return shares.reduce((sum, { milliamps }) => sum + milliamps, 0);
}
