/** Frames of many pieces from one compiled program, to be compared with the engine's. */
import { printHostBundle } from '../../codegen/host-bundle.ts';
import { type HostOptions, withHost } from '../../codegen/rehearse/host.ts';
import type { Moment } from '../../engine/look/moment.ts';
import type { Score } from '../../engine/look/score.ts';

export interface Scene {
  /** Index of the score in the bundle. */
  readonly piece: number;
  readonly moment: Moment;
}

const noLook = 255;

/** The drive of each scene, in wire order, as a line of hexadecimal digits. */
export async function bundleDrives(
  scores: readonly Score[],
  scenes: readonly Scene[],
  options: HostOptions,
): Promise<string[]> {
  const input = scenes.map(({ piece, moment }) => `${piece} ${momentText(moment)}\n`).join('');
  const text = printHostBundle(scores);
  const built = await withHost(text, (program) => program.run(['moments'], input), options);
  if (built.value === undefined) throw new Error(JSON.stringify(built.diagnostics));
  return built.value.trimEnd().split('\n');
}

function momentText({ look, ms, brightness, blackout, leaving }: Moment): string {
  const { look: leavingLook, ms: leavingMs, mix } = leaving ?? { look: noLook, ms: 0, mix: 0 };
  return [look, ms, brightness, Number(blackout), leavingLook, leavingMs, mix].join(' ');
}
