/** A piece as a file has it, to be damaged: a landing stage with one strip, one look and one clip. */

type Data = Record<string, unknown>;

export function stage(): Data {
  return {
    version: 2,
    name: 'Landing stage',
    board: 'atmega328p',
    lines: [
      {
        pin: 6,
        part: 'ws2812b',
        runs: [{ name: 'rail', flat: { kind: 'straight', count: 8, start: [0, 0], pitchMillimetres: 20 } }],
      },
    ],
    looks: [
      {
        name: 'Dusk',
        lengthMilliseconds: 4000,
        tracks: [
          { clips: [{ pattern: 'still/1', lengthMilliseconds: 4000, parameters: { tint: '#204060' } }] },
        ],
      },
    ],
  };
}

export const clipPath = 'looks[0].tracks[0].clips[0]';

/** The stage with the values at some paths replaced; undefined removes one, missing objects are made. */
export function stageWith(changes: Readonly<Record<string, unknown>>): Data {
  const piece = stage();
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.match(/[^.[\]]+/g)!;
    const last = keys.pop()!;
    let at = piece;
    for (const key of keys) {
      at[key] ??= {};
      at = at[key] as Data;
    }
    if (value === undefined) delete at[last];
    else at[last] = value;
  }
  return piece;
}
