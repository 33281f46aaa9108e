/** The page in a real browser without a graphics card: what a maker with a weak computer waits for. */
import { openHouse } from '../../app/browser/house.ts';
import { median } from './delays.ts';
import { measureDrag, measureFirstLight, measureFirstScripts, measurePlay } from './measure.ts';

interface Line {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly goal: string;
  readonly met: boolean;
  /** The time as a multiple of the calibration loop of the same run; null for what is no time. */
  readonly divided: number | null;
}

/** @returns the divided times by their names, for the baseline; missed goals set the exit code */
export async function printPage(baseline: Readonly<Record<string, number>>): Promise<Record<string, number>> {
  const site = await openHouse();
  try {
    const scripts = await measureFirstScripts(site);
    const kilobytes = [...scripts.values()].reduce((sum, bytes) => sum + bytes, 0) / 1000;
    const light = await measureFirstLight(site);
    const drag = await measureDrag(site);
    const play = await measurePlay(site);
    const both = median(drag.both);
    const lines: Line[] = [
      {
        what: 'drag, 500 pixels',
        value: both,
        unit: 'ms',
        goal: 'under 50',
        met: both < 50,
        divided: both / drag.calibration,
      },
      {
        what: 'play, 1000 pixels',
        value: play.framesASecond,
        unit: 'frames/s',
        goal: 'at least 30',
        met: play.framesASecond >= 30,
        divided: 1000 / play.framesASecond / play.calibration,
      },
      {
        what: 'first light',
        value: light.milliseconds,
        unit: 'ms',
        goal: 'under 1500',
        met: light.milliseconds < 1500,
        divided: light.milliseconds / light.calibration,
      },
      {
        what: 'first JavaScript',
        value: kilobytes,
        unit: 'kB gzipped',
        goal: 'at most 450',
        met: kilobytes <= 450,
        divided: null,
      },
    ];
    printLines(lines, baseline);
    const of = (delays: readonly number[]) =>
      `${median(delays).toFixed(0)} ms (slowest of ${delays.length}: ${Math.max(...delays).toFixed(0)})`;
    console.log(
      `a move of the drag is in the picture after ${of(drag.picture)}, on the loom after ${of(drag.loom)}`,
    );
    for (const [file, bytes] of scripts) console.log(`  ${(bytes / 1000).toFixed(1).padStart(6)} kB ${file}`);
    if (lines.some(({ met }) => !met)) process.exitCode = 1;
    return Object.fromEntries(
      lines.flatMap(({ what, divided }) =>
        divided === null ? [] : [[nameOf(what), Number(divided.toFixed(2))] as const],
      ),
    );
  } finally {
    await site.close();
  }
}

const nameOf = (what: string) => `page: ${what}`;

function printLines(lines: readonly Line[], baseline: Readonly<Record<string, number>>): void {
  console.log('\nthe page                 figure                 goal      in calibration loops   baseline');
  for (const { what, value, unit, goal, met, divided } of lines) {
    const figure = `${value.toFixed(value < 100 ? 1 : 0)} ${unit}`;
    const loops = divided === null ? '-' : divided.toFixed(2);
    const usual = baseline[nameOf(what)]?.toFixed(2) ?? '-';
    console.log(
      `${what.padEnd(20)}${figure.padStart(18)}${goal.padStart(20)}${loops.padStart(20)}${usual.padStart(14)}${met ? '' : '  missed'}`,
    );
  }
}
