/** What the tag tells of the piece as a whole, whatever is in hand. */
import type { Piece } from '../../../../engine/piece/schema.ts';
import { GarmentSection } from '../garment/GarmentSection.tsx';
import { WiresSection } from '../wires/WiresSection.tsx';
import { ZonesSection } from '../zones/ZonesSection.tsx';
import { Section } from './Section.tsx';

export function PieceSections({ piece }: { piece: Piece }) {
  return (
    <>
      <Section title="Zones" open>
        <ZonesSection piece={piece} />
      </Section>
      <Section title="Wires to cut">
        <WiresSection piece={piece} />
      </Section>
      <Section title="Garment underneath">
        <GarmentSection />
      </Section>
    </>
  );
}
