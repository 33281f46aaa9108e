/** When the clip is on: the exact way, and the way without a pointer, of what is dragged on the loom. */
import { shortestClip } from '../../../engine/edit/kinds/clips.ts';
import { fitClip } from '../../../engine/edit/snap/fit-clip.ts';
import { fitEdge } from '../../../engine/edit/snap/fit-edge.ts';
import { limits } from '../../../engine/piece/limits.ts';
import type { Look } from '../../../engine/piece/schema.ts';
import { useClipInHand, useClipPart, useLookPart, useTimes } from './clip-in-hand.ts';
import { Dial } from './Dial.tsx';
import { Entry } from './Entry.tsx';
import { time } from './measures.ts';
import { RowFault } from './RowFault.tsx';
import { niceStep } from './steps.ts';

/** Arrows move a clip by tenths of a second, and by whole ones with Shift. */
const stepMilliseconds = 100;

export function TimeRows() {
  return (
    <>
      <StartRow />
      <LengthRow />
      <EndlessRow />
    </>
  );
}

function StartRow() {
  const hand = useClipInHand();
  const { track, clip: index } = hand.at;
  const { startMilliseconds } = useTimes();
  const nearestIn = (look: Look, wanted: number) => {
    const clip = look.tracks[track]?.clips[index];
    // Asked once more when the clip has just gone.
    if (clip === undefined) return wanted;
    return fitClip(look, track, { ...clip, startMilliseconds: wanted }, index) ?? clip.startMilliseconds;
  };
  const latest = useLookPart((look) => nearestIn(look, limits.lookMilliseconds));
  const check = (ms: number) => {
    const look = hand.now()?.piece.looks[hand.at.look];
    const nearest = look === undefined ? ms : nearestIn(look, ms);
    return nearest === ms ? null : `Taken there; ${time.text(nearest)} is the nearest free start.`;
  };
  return (
    <div className="figure-row">
      <span>Starts at</span>
      <Entry
        label="Starts at"
        value={startMilliseconds}
        min={0}
        max={latest}
        step={stepMilliseconds}
        measure={time}
        check={check}
        onChange={(ms) =>
          hand.edit('start', (at) => ({ kind: 'move-clip', at, to: at, startMilliseconds: ms }), 'drag')
        }
        onRest={() => hand.rest()}
      />
      <RowFault row="start" />
    </div>
  );
}

function LengthRow() {
  const hand = useClipInHand();
  const { startMilliseconds, lengthMilliseconds } = useTimes();
  const longest = useLookPart(
    (look) => fitEdge(look, hand.at, 'end', 2 * limits.lookMilliseconds)?.lengthMilliseconds ?? shortestClip,
  );
  return (
    <div className="figure-row">
      <span>Lasts</span>
      <Entry
        label="Lasts"
        value={lengthMilliseconds}
        min={shortestClip}
        max={longest}
        step={stepMilliseconds}
        measure={time}
        onChange={(ms) =>
          hand.edit(
            'length',
            (at) => ({ kind: 'trim-clip', at, startMilliseconds, lengthMilliseconds: ms }),
            'drag',
          )
        }
        onRest={() => hand.rest()}
      />
      <RowFault row="length" />
    </div>
  );
}

function EndlessRow() {
  const hand = useClipInHand();
  const endless = useClipPart((clip) => clip.endless);
  return (
    <div className="figure-row">
      <label>
        <span>Endless</span>
        <input
          className="switch"
          type="checkbox"
          checked={endless}
          onChange={(event) => hand.set('endless', { endless: event.target.checked })}
        />
      </label>
      <p className="says">
        {endless
          ? 'It goes on over all loops, until the look is left.'
          : 'It begins anew with each loop of the look.'}
      </p>
      <RowFault row="endless" />
    </div>
  );
}

const fades = [
  { label: 'Fade in', field: 'fadeInMilliseconds' },
  { label: 'Fade out', field: 'fadeOutMilliseconds' },
] as const;

export function FadeRows() {
  const endless = useClipPart((clip) => clip.endless);
  return fades
    .filter(({ field }) => !(endless && field === 'fadeOutMilliseconds'))
    .map((fade) => <FadeRow key={fade.field} {...fade} />);
}

function FadeRow({ label, field }: (typeof fades)[number]) {
  const hand = useClipInHand();
  const value = useClipPart((clip) => clip[field]);
  const length = useClipPart((clip) => clip.lengthMilliseconds);
  const most = Math.min(length, limits.fadeMilliseconds);
  return (
    <>
      <Dial
        label={label}
        min={0}
        max={most}
        step={Math.max(1, Math.round(niceStep(most)))}
        value={value}
        measure={time}
        usual={0}
        onChange={(ms) => hand.set(field, { [field]: ms }, 'drag')}
        onRest={() => hand.rest()}
        onReset={() => hand.set(field, { [field]: 0 })}
      />
      <RowFault row={field} />
    </>
  );
}
