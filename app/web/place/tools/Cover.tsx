/** Takes every pointer that goes down on the table, for a tool that draws. */
import type { PointerEvent } from 'react';
import { useCamera } from '../surface/context.ts';

export function Cover({ onDown }: { onDown(event: PointerEvent<SVGRectElement>): void }) {
  const { size } = useCamera();
  return <rect className="cover" width={size.width} height={size.height} onPointerDown={onDown} />;
}
