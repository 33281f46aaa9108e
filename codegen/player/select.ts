/**
 * The parts of the sketch that are the same for every piece stand as C++ text beside this file. Lines
 * between `//? name` and `//.` stay only where the feature is there, between `//? !name` and `//.` only
 * where it is not; blocks may nest.
 */

/** What a sketch needs; everything it does not need is left out. */
export type Features = Readonly<Record<string, boolean>>;

/** @throws Error if the text names a feature that does not exist or is not balanced: a mistake of ours. */
export function select(text: string, features: Features): string {
  const kept: string[] = [];
  const open: boolean[] = [];
  for (const line of text.split('\n')) {
    const condition = /^\/\/\? (!?)(\w+)$/.exec(line);
    if (condition !== null) {
      const feature = features[condition[2]!];
      if (feature === undefined) throw new Error(`no feature is called ${condition[2]}`);
      open.push(feature !== (condition[1] === '!'));
    } else if (line === '//.') {
      if (open.pop() === undefined) throw new Error('a block ends that never began');
    } else if (open.every(Boolean)) {
      kept.push(line);
    }
  }
  if (open.length > 0) throw new Error('a block never ends');
  return kept.join('\n');
}
