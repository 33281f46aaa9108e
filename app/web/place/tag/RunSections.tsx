/** More of the one run in hand: the nodes of its curve, and its single pixels. */
import type { Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { pathOn } from '../curve/bend.ts';
import { CurveSection } from '../curve/CurveSection.tsx';
import { PixelsSection } from '../pixels/PixelsSection.tsx';
import { Section } from './Section.tsx';

export function RunSections({ run }: { run: Run }) {
  const side = useStore(useSession().desk.side);
  return (
    <>
      {pathOn(run, side) !== undefined && (
        <Section title="Curve" open>
          <CurveSection run={run} />
        </Section>
      )}
      <Section title="Single pixels">
        <PixelsSection key={run.name} run={run} />
      </Section>
    </>
  );
}
