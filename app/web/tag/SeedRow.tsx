/** The number that chance begins from. */
import { useClipInHand, useClipPart } from './clip-in-hand.ts';
import { Entry } from './Entry.tsx';
import { plainMeasure } from './measures.ts';
import { nextSeed } from './seed.ts';

const most = 65535;
const bare = plainMeasure();

export function SeedRow() {
  const hand = useClipInHand();
  const seed = useClipPart((clip) => clip.seed);
  const set = (value: number) => hand.set('seed', { seed: value }, 'drag');
  return (
    <div className="figure-row">
      <span>Seed</span>
      <span className="seed">
        <button
          type="button"
          className="quiet small"
          onClick={() => {
            set(nextSeed(seed));
            hand.rest();
          }}
        >
          Another throw
        </button>
        <Entry
          label="Seed"
          value={seed}
          min={0}
          max={most}
          step={1}
          measure={bare}
          whole
          onChange={set}
          onRest={() => hand.rest()}
        />
      </span>
      <p className="says">The same seed gives the same play of chance, each time and on the chip.</p>
    </div>
  );
}
