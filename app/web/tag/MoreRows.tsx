/** What is set once and seldom turned. */
import { useState } from 'react';
import { PatternRow } from './PatternRow.tsx';
import { SeedRow } from './SeedRow.tsx';
import { FadeRows, TimeRows } from './TimeRows.tsx';

export function MoreRows({ chance }: { chance: boolean }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="more-rows" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>More about this clip</summary>
      {open && (
        <div className="rows">
          <PatternRow />
          <TimeRows />
          <FadeRows />
          {chance && <SeedRow />}
        </div>
      )}
    </details>
  );
}
