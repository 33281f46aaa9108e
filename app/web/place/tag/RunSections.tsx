/** More of the one run in hand: its single pixels. */
import type { Run } from '../../../../engine/piece/schema.ts';
import { PixelsSection } from '../pixels/PixelsSection.tsx';
import { Section } from './Section.tsx';

export function RunSections({ run }: { run: Run }) {
  return (
    <Section title="Single pixels">
      <PixelsSection key={run.name} run={run} />
    </Section>
  );
}
