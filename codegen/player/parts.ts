/** The parts of the sketch that are C++ text, with the lines that a piece does not need left out. */
import blend from './blend.inc.cpp';
import buttons from './buttons.inc.cpp';
import chipMain from './chip-main.inc.cpp';
import clips from './clips.inc.cpp';
import clock from './clock.inc.cpp';
import desk from './desk.inc.cpp';
import frame from './frame.inc.cpp';
import guardAvr from './guard-avr.inc.cpp';
import hostMain from './host-main.inc.cpp';
import keyframes from './keyframes.inc.cpp';
import output from './output.inc.cpp';
import preambleAvr from './preamble-avr.inc.cpp';
import preambleHost from './preamble-host.inc.cpp';
import { type Features, select } from './select.ts';
import state from './state.inc.cpp';
import { rule } from './text.ts';
import types from './types.inc.cpp';
import zones from './zones.inc.cpp';

const texts = {
  blend,
  buttons,
  chipMain,
  clips,
  clock,
  desk,
  frame,
  guardAvr,
  hostMain,
  keyframes,
  output,
  preambleAvr,
  preambleHost,
  state,
  types,
  zones,
};

export type PartName = keyof typeof texts;

export function part(name: PartName, features: Features): string {
  return select(texts[name], features).replace(/^\/\/ ---- (.*)$/gm, (_, title: string) => rule(title));
}
