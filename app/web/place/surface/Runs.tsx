/** The runs on a table: strip, pixels, and all that can be pointed at. */
import { memo, type PointerEvent, useMemo } from 'react';
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Run } from '../../../../engine/piece/schema.ts';
import { runWords } from '../words.ts';
import { useCamera } from './context.ts';
import { outlineOf } from './outline.ts';
import { World } from './Surface.tsx';

export interface RunHands {
  onDown(event: PointerEvent<SVGGElement>, run: string): void;
  /** The pointer or the focus is on a run, or on none. */
  onPoint(run: string | null): void;
  /** The focus leaves a run: what is done next is another step. */
  onRest(): void;
}

interface Props {
  readonly runs: readonly Run[];
  readonly inHand: readonly Run[];
  readonly hands: RunHands;
}

export function Runs({ runs, inHand, hands }: Props) {
  const { side } = useCamera();
  const taken = useMemo(() => new Set(inHand), [inHand]);
  return (
    <World className="runs">
      {runs.map((run) => (
        <RunOnTable key={run.name} run={run} side={side} taken={taken.has(run)} hands={hands} />
      ))}
    </World>
  );
}

interface RunProps {
  readonly run: Run;
  readonly side: Side;
  readonly taken: boolean;
  readonly hands: RunHands;
}

/** Drawn again only when the run is another one: not when the camera moves. */
const RunOnTable = memo(function RunOnTable({ run, side, taken, hands }: RunProps) {
  const { dots, hiddenDots, way, pitch } = outlineOf(run, side);
  const { name } = run;
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no button.
    <g
      className="run"
      role="button"
      tabIndex={0}
      aria-pressed={taken}
      aria-label={`${name}: ${runWords(run)}`}
      data-run={name}
      data-borrowed={side === 'worn' && run.worn === undefined}
      style={{ '--pitch': `${pitch.toFixed(2)}px` } as React.CSSProperties}
      onPointerDown={(event) => hands.onDown(event, name)}
      onPointerEnter={() => hands.onPoint(name)}
      onPointerLeave={() => hands.onPoint(null)}
      onFocus={() => hands.onPoint(name)}
      onBlur={() => {
        hands.onPoint(null);
        hands.onRest();
      }}
    >
      <path className="reach" d={way} />
      <path className="tape" d={way} />
      <path className="dots" d={dots} />
      {hiddenDots !== '' && <path className="dots hidden" d={hiddenDots} />}
    </g>
  );
});
