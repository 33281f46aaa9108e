/** Shows all again once a run has been added that is not seen as a whole. */
import { useEffect, useRef } from 'react';
import { type Box, holds } from './box.ts';
import { seenBox } from './camera.ts';
import { useCamera } from './context.ts';

export function KeepInView({ whole, runs }: { readonly whole: Box; readonly runs: number }) {
  const view = useCamera();
  const latest = useRef({ view, whole });
  useEffect(() => {
    latest.current = { view, whole };
  });
  const before = useRef(runs);
  useEffect(() => {
    const added = runs > before.current;
    before.current = runs;
    const { view, whole } = latest.current;
    // A run that is being drawn stays under the hand that draws it.
    if (!added || view.pull.current !== null) return;
    const seen = seenBox(view.camera, view.size);
    const isSeen =
      holds(seen, { x: whole.left, y: whole.top }) && holds(seen, { x: whole.right, y: whole.bottom });
    if (!isSeen) view.fit(whole);
  }, [runs]);
  return null;
}
