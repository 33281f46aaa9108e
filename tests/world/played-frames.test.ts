/**
 * Frames drawn in the course of playing: the sketch's own clocks, which never divide, lead it to the same
 * moments and the same bytes as the engine's player, whose time is calculated from the look's entry.
 */
import { expect, test } from 'vitest';
import { printHostBundle } from '../../codegen/host-bundle.ts';
import { withHost } from '../../codegen/rehearse/host.ts';
import { Player } from '../../engine/controls/player.ts';
import { printEvents } from '../../engine/controls/press.ts';
import { frame } from '../../engine/look/frame.ts';
import type { Moment } from '../../engine/look/moment.ts';
import type { Score } from '../../engine/look/score.ts';
import { Chance } from '../support/generate/chance.ts';
import { scriptOf } from '../support/generate/controls.ts';
import { generatePlaying, type Playing, scoreWithButtons } from './playing.ts';

const pieces = 40;
const framesEach = 60;
const firstSeed = 6001;

/** Adds `PROG PIECE shots START` to a bundle: plays contacts, and prints moment and frame where a shot is due. */
function withShots(bundle: string, count: number): string {
  const shots = (piece: number) => `namespace piece_${piece} {
static int shots(uint32_t start) {
  desk_millis = start;
  last_millis = start;
  live.uptime_ms = start;
  start_player();
  unsigned ms = 0, at = 0, button = 0, level = 0;
  char step = 0;
  while (scanf(" %c %u %u %u", &step, &at, &button, &level) == 4) {
    play_until(ms, step == 's' || at == 0 ? at : at - 1);
    if (step == 'c') {
      desk_down[button] = level != 0;
      continue;
    }
    take_moment();
    draw_frame();
    printf("%u %u %u %u ", shown.look, (unsigned)shown.ms, shown.brightness, shown.blackout);
    printf("%u ", (unsigned)shown.uptime_ms);
    if (shown.leaving_look != NO_LOOK) {
      printf("%u %u %u ", shown.leaving_look, (unsigned)shown.leaving_ms, shown.leaving_mix);
    }
    print_frame();
  }
  return 0;
}
}
`;
  const all = Array.from({ length: count }, (_, piece) => piece);
  const table = `static int (*const SHOTS[])(uint32_t) = {${all.map((piece) => `piece_${piece}::shots`).join(', ')}};\n`;
  const [head, body] = bundle.split(/(?<=int main\(int argc, char \*\*argv\) \{\n)/);
  const choice = `  if (argc == 4 && strcmp(argv[2], "shots") == 0) {
    return SHOTS[strtoul(argv[1], nullptr, 10)]((uint32_t)strtoul(argv[3], nullptr, 10));
  }
`;
  const mainAt = head!.lastIndexOf('int main(');
  return [head!.slice(0, mainAt), ...all.map(shots), table, head!.slice(mainAt), choice, body].join('');
}

interface Filmed extends Playing {
  /** Milliseconds of the script, rising. */
  readonly shots: readonly number[];
}

/** Contacts as `c MS BUTTON LEVEL`, shots as `s MS 0 0`; in one millisecond the contact is felt before the shot. */
function shotsInput(score: Score, { script, shots }: Filmed): string {
  const contacts = scriptOf(script, score.piece).contacts.map(({ ms, button, down }) => ({
    ms,
    line: `c ${ms} ${button} ${Number(down)}\n`,
  }));
  const taken = shots.map((ms) => ({ ms, line: `s ${ms} 0 0\n` }));
  return [...contacts, ...taken]
    .sort((a, b) => a.ms - b.ms)
    .map(({ line }) => line)
    .join('');
}

function shotText(score: Score, moment: Moment): string {
  const { look, ms, brightness, blackout, uptimeMs, leaving } = moment;
  const left = leaving === null ? [] : [leaving.look, leaving.ms, leaving.mix];
  const drive = Buffer.from(frame(score, moment).drive).toString('hex');
  return `${[look, ms, brightness, Number(blackout), uptimeMs, ...left, drive].join(' ')}\n`;
}

function engineShots(score: Score, filmed: Filmed): string {
  const { contacts } = scriptOf(filmed.script, score.piece);
  const player = new Player(score, filmed.start);
  const down = score.piece.controls.buttons.map(() => false);
  let text = '';
  let next = 0;
  for (let ms = 1; ms <= filmed.shots.at(-1)!; ms++) {
    for (; next < contacts.length && contacts[next]!.ms <= ms; next++) {
      down[contacts[next]!.button] = contacts[next]!.down;
    }
    text += printEvents(player.step(down).map((event) => ({ ...event, ms })));
    if (filmed.shots.includes(ms)) text += shotText(score, player.moment());
  }
  return text;
}

test(`T1 R4 ${pieces} pieces played, ${framesEach} frames each on the way, seeds ${firstSeed} and on`, async () => {
  const seeds = Array.from({ length: pieces }, (_, index) => firstSeed + index);
  const scores = seeds.map(scoreWithButtons);
  const filmed = scores.map((score, piece): Filmed => {
    const chance = new Chance(seeds[piece]! * 7919);
    const playing = generatePlaying(chance, score, piece);
    const { endMs } = scriptOf(playing.script, score.piece);
    const times = new Set(chance.list(framesEach, () => chance.whole(1, endMs + 60_000)));
    return { ...playing, shots: [...times].sort((a, b) => a - b) };
  });
  const { value: host, diagnostics } = await withHost(
    withShots(printHostBundle(scores), pieces),
    (program) =>
      Promise.all(
        filmed.map((one) =>
          program.run([String(one.piece), 'shots', String(one.start)], shotsInput(scores[one.piece]!, one)),
        ),
      ),
    { optimise: '-O1' },
  );
  expect(diagnostics).toEqual([]);
  let leaving = 0;
  for (const [piece, one] of filmed.entries()) {
    const engine = engineShots(scores[piece]!, one).split('\n');
    const drawn = host![piece]!.split('\n');
    for (const [line, text] of engine.entries()) {
      if (drawn[line] !== text)
        expect({ seed: seeds[piece], line, text: drawn[line] }).toMatchObject({ text });
    }
    expect(drawn).toHaveLength(engine.length);
    leaving += engine.filter((text) => text.split(' ').length === 9).length;
  }
  expect(leaving).toBeGreaterThan(pieces);
});
