/** The output stage fits the pixel part. */
import { pixelParts } from '../../parts/pixels.ts';
import type { Findings } from '../findings.ts';
import type { Piece } from '../schema.ts';

export function checkOutput({ lines, output }: Piece, findings: Findings): void {
  const part = lines[0]!.part;
  const { channels } = pixelParts[part];
  const figures = output.balance?.length ?? channels;
  if (figures === channels) return;
  const message = `The balance has ${figures} figures, but a ${part.toUpperCase()} has ${channels} channels.`;
  findings.error('balance-length', 'output.balance', message, `Write ${channels} figures, red first.`);
}
