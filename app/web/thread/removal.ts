/** What goes with a look that is removed. */
import type { Piece } from '../../../engine/piece/schema.ts';

const gestureWords = { press: 'press', hold: 'hold', double: 'double press' } as const;

/** In sentences; empty where nothing else is touched. */
export function whatGoesWith(piece: Piece, name: string): string[] {
  const look = piece.looks.find((one) => one.name === name);
  const clips = look?.tracks.reduce((sum, track) => sum + track.clips.length, 0) ?? 0;
  const timers = piece.looks.filter((one) => one.name !== name && one.moveOn?.to === name);
  const gestures = piece.controls.buttons.flatMap((button) =>
    (['press', 'hold', 'double'] as const)
      .filter((gesture) => {
        const action = button[gesture];
        return action?.do === 'go-to-look' && action.look === name;
      })
      .map((gesture) => `The ${gestureWords[gesture]} of ${button.name} will do nothing.`),
  );
  return [
    ...(clips === 0 ? [] : [clips === 1 ? 'Its clip goes with it.' : `Its ${clips} clips go with it.`]),
    ...timers.map((one) => `${one.name} will move on to the next look instead.`),
    ...gestures,
  ];
}
