/** The tools of the table: a hint in words, and the layer that lies on the table while a tool is in hand. */
import type { ComponentType } from 'react';
import { BendLayer } from '../curve/BendLayer.tsx';
import { DrawLayer } from '../curve/DrawLayer.tsx';
import { MeasureLayer } from '../garment/MeasureLayer.tsx';
import { ShiftLayer } from '../garment/ShiftLayer.tsx';
import type { Tool, ToolKind, ToolOf } from '../hand.ts';
import { layKinds } from '../lay/kinds.ts';
import { MendLayer } from '../pixels/MendLayer.tsx';
import { LassoLayer } from '../zones/LassoLayer.tsx';
import { DotLayer } from './DotLayer.tsx';
import { LayLayer } from './LayLayer.tsx';

interface ToolDescription<Kind extends ToolKind> {
  hint(tool: ToolOf<Kind>): string;
  /** Covers the table and takes the pointer. Undefined for the hand at rest, which lets runs be grabbed. */
  readonly Layer?: ComponentType<{ tool: ToolOf<Kind> }>;
}

export const tools: { readonly [Kind in ToolKind]: ToolDescription<Kind> } = {
  pick: { hint: () => '' },
  lay: { hint: ({ shape }) => layKinds[shape].byHand, Layer: LayLayer },
  dot: { hint: () => 'Tap where each pixel goes, in the order of the data.', Layer: DotLayer },
  lasso: { hint: () => 'Draw a line around pixels.', Layer: LassoLayer },
  mend: {
    hint: ({ to }) =>
      `Tap pixels to ${to === 'hidden' ? 'hide them' : 'cut them out'}; once more brings them back.`,
    Layer: MendLayer,
  },
  draw: {
    hint: () => 'Tap where the curve goes through; tap the last spot again, or press Enter, to finish.',
    Layer: DrawLayer,
  },
  bend: { hint: () => 'Pull nodes and handles; a double press adds a node.', Layer: BendLayer },
  measure: { hint: () => 'Drag along something whose length you know.', Layer: MeasureLayer },
  shift: { hint: () => 'Drag the picture; with Shift it turns.', Layer: ShiftLayer },
};

export function hintOf(tool: Tool): string {
  return (tools[tool.kind].hint as (tool: Tool) => string)(tool);
}

export function layerOf(tool: Tool): ComponentType<{ tool: Tool }> | undefined {
  return tools[tool.kind].Layer as ComponentType<{ tool: Tool }> | undefined;
}
