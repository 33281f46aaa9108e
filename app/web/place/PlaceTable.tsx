/** One of the two tables: where runs lie on the bench, or as they are seen on the body. */
import { type KeyboardEvent, type PointerEvent, useMemo } from 'react';
import type { Side } from '../../../engine/edit/kinds/runs.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { GarmentUnder } from './garment/GarmentUnder.tsx';
import { useHand } from './hand.ts';
import { Handles } from './handles/Handles.tsx';
import { useRunsInHand } from './in-hand.ts';
import { grabRun } from './move/drag-runs.ts';
import { tableKey } from './move/keys.ts';
import { startMarquee } from './move/marquee.ts';
import { type Box, boxAround } from './surface/box.ts';
import { type SurfaceView, useCamera } from './surface/context.ts';
import { DataLine, Wires } from './surface/DataLine.tsx';
import { KeepInView } from './surface/KeepInView.tsx';
import { addressesOf, placesOn, runsOf } from './surface/places.ts';
import { type RunHands, Runs } from './surface/Runs.tsx';
import { Surface } from './surface/Surface.tsx';
import { Guides, Marquee, ReadoutWords } from './surface/Traces.tsx';
import { TableFrame } from './TableFrame.tsx';
import { layerOf } from './tools/tools.ts';
import { PointedMarks } from './zones/PointedMarks.tsx';
import { ZoneRoute } from './zones/ZoneRoute.tsx';

const labels: Readonly<Record<Side, string>> = { flat: 'Flat table', worn: 'Worn table' };

/** Room for a first run. */
const emptyTable: Box = { left: -300, right: 300, bottom: -200, top: 200 };

export function PlaceTable({ piece, side }: { piece: Piece; side: Side }) {
  const session = useSession();
  const hand = useHand();
  const opened = usePart(session.bench, (bench) => bench.opened);
  const whole = useMemo(() => boxAround(placesOn(runsOf(piece), side)) ?? emptyTable, [piece, side]);

  const onBareDown = (event: PointerEvent, view: SurfaceView) => {
    session.desk.side.set(side);
    startMarquee(event, view, session, hand);
  };
  const onKey = (event: KeyboardEvent, view: SurfaceView) => {
    session.desk.side.set(side);
    const run = (event.target as Element).closest('[data-run]')?.getAttribute('data-run') ?? undefined;
    if (tableKey(event, view, session, hand, run)) event.preventDefault();
  };

  return (
    <Surface
      side={side}
      label={labels[side]}
      whole={whole}
      opened={opened}
      onBareDown={onBareDown}
      onKey={onKey}
      under={<GarmentUnder />}
      aside={<TableFrame piece={piece} />}
    >
      <KeepInView whole={whole} runs={runsOf(piece).length} />
      <Wires piece={piece} />
      <RunsToGrab piece={piece} />
      <DataLine piece={piece} />
      <ZoneRoute piece={piece} />
      <PointedMarks piece={piece} />
      <Marquee />
      <Guides />
      <Handles piece={piece} />
      <ReadoutWords />
      <ToolLayer />
    </Surface>
  );
}

function RunsToGrab({ piece }: { piece: Piece }) {
  const session = useSession();
  const hand = useHand();
  const view = useCamera();
  const inHand = useRunsInHand(piece);
  const hands = useMemo<RunHands>(
    () => ({
      onDown(event, run) {
        if (event.button !== 0) return;
        session.desk.side.set(view.side);
        grabRun(event, run, view, session, hand);
      },
      onPoint(run) {
        const open = session.bench.get().open;
        if (open === null) return;
        session.desk.pointed.set(run === null ? [] : addressesOf(open.piece, [run]));
      },
      onRest: () => session.endDrag(),
    }),
    [session, hand, view],
  );
  return <Runs runs={useMemo(() => runsOf(piece), [piece])} inHand={inHand} hands={hands} />;
}

function ToolLayer() {
  const tool = useStore(useHand().tool);
  const Layer = layerOf(tool);
  return Layer === undefined ? null : <Layer tool={tool} />;
}
