/** Locals that hold the keyframed parameters of a program. */
import type { ClipProgram } from '../../engine/pattern/program.ts';

/**
 * One identifier a slot, each once: a colour `tint` (`keyed_tint_red` ...) and a number `tint_red` may meet
 * in one pattern.
 */
export function keyedNames({ keyed }: ClipProgram): string[] {
  const taken = new Set<string>();
  return keyed.map(({ name }) => {
    const base = `keyed_${name}`;
    let free = base;
    for (let copy = 2; taken.has(free); copy++) free = `${base}_${copy}`;
    taken.add(free);
    return free;
  });
}
