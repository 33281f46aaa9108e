/** The bench where looks are woven: the loom, the tag of the clip in hand, and its source if asked for. */
import { useState } from 'react';
import { SwatchDrawer } from '../swatches/SwatchDrawer.tsx';
import { Tag } from '../tag/Tag.tsx';
import { Loom } from './Loom.tsx';
import { PatternPane } from './PatternPane.tsx';

export function ComposeBench() {
  const [sourceOpen, setSourceOpen] = useState(false);
  return (
    <div className="compose" data-source={sourceOpen}>
      <div className="weaving">
        <Loom />
        {sourceOpen && <PatternPane onClose={() => setSourceOpen(false)} />}
      </div>
      <Tag sourceOpen={sourceOpen} onSource={() => setSourceOpen(!sourceOpen)} />
      <SwatchDrawer />
    </div>
  );
}
