/** All commands, in the order of the work. */
import type { Command } from '../terminal.ts';
import { check } from './check.ts';
import { frames } from './frames.ts';
import { patterns } from './patterns.ts';
import { power } from './power.ts';
import { press } from './press.ts';
import { rehearse } from './rehearse.ts';
import { schema } from './schema.ts';
import { sketch } from './sketch.ts';

export const commands: Readonly<Record<string, Command>> = {
  schema,
  patterns,
  check,
  frames,
  power,
  press,
  sketch,
  rehearse,
};
