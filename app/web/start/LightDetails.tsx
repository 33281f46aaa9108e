/** How much there is of the first thing that lights. */
import { pixelParts } from '../../../engine/parts/pixels.ts';
import { limits } from '../../../engine/piece/limits.ts';
import { Ask } from '../shell/Ask.tsx';
import { Amount } from './Amount.tsx';
import { type Answers, densities, pixelCount } from './answers.ts';

interface Props {
  readonly answers: Answers;
  readonly set: (change: Partial<Answers>) => void;
}

export function LightDetails(props: Props) {
  const { answers } = props;
  const Details = { strip: StripDetails, ring: RingDetails, grid: GridDetails, pixels: LooseDetails }[
    answers.light
  ];
  return (
    <>
      <Details {...props} />
      <p className="whisper printed-where">
        marked {pixelParts[answers.part].title}
        <Ask about="the marking of pixels" question="Where is that marked?">
          On the reel or in the shop’s description. This is the one kind the workshop knows so far: most
          square white pixels of 5 mm with one data wire behave like it.
        </Ask>
      </p>
    </>
  );
}

function StripDetails({ answers, set }: Props) {
  const { metres, perMetre } = answers;
  return (
    <>
      <Amount
        label="Length"
        unit="m"
        value={Number(metres.toFixed(3))}
        min={0.005}
        max={limits.pixels / perMetre}
        step="any"
        onChange={(value) => set({ metres: value })}
      />
      <span className="measure">
        <label htmlFor="density">Pixels a metre</label>
        <select
          id="density"
          value={perMetre}
          onChange={({ target }) => set({ perMetre: Number(target.value) })}
        >
          {densities.map((density) => (
            <option key={density}>{density}</option>
          ))}
        </select>
      </span>
      <Amount
        label="or count them"
        value={pixelCount(answers)}
        min={1}
        max={limits.pixels}
        step={1}
        onChange={(count) => set({ metres: count / perMetre })}
      />
    </>
  );
}

function RingDetails({ answers, set }: Props) {
  return (
    <>
      <Amount
        label="Pixels around"
        value={answers.around}
        min={1}
        max={limits.pixels}
        step={1}
        onChange={(around) => set({ around })}
      />
      <Amount
        label="Across"
        unit="mm"
        value={answers.diameterMillimetres}
        min={1}
        max={20_000}
        step="any"
        onChange={(diameterMillimetres) => set({ diameterMillimetres })}
      />
    </>
  );
}

/** Sides whose product stays within what a piece may hold. */
const longestSide = Math.floor(Math.sqrt(limits.pixels));

function GridDetails({ answers, set }: Props) {
  return (
    <>
      <Amount
        label="Columns"
        value={answers.columns}
        min={1}
        max={longestSide}
        step={1}
        onChange={(columns) => set({ columns })}
      />
      <Amount
        label="Rows"
        value={answers.rows}
        min={1}
        max={longestSide}
        step={1}
        onChange={(rows) => set({ rows })}
      />
    </>
  );
}

function LooseDetails({ answers, set }: Props) {
  return (
    <Amount
      label="How many"
      value={answers.loose}
      min={1}
      max={limits.pixels}
      step={1}
      onChange={(loose) => set({ loose })}
    />
  );
}
