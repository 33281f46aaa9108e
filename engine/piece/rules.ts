/** Rules of the schema that go beyond kind and size, by the code under which they are reported. */
export const rules = {
  'name-length': { message: 'A name has 1 to 40 characters.', advice: 'Choose a name within that length.' },
  'name-characters': {
    message: 'A name holds no control characters, line breaks or direction marks.',
    advice: 'Type the name anew; such characters often come in by copying.',
  },
  'name-spaces': { message: 'A name does not begin or end with a space.', advice: 'Remove the space.' },
  'colour-form': {
    message: 'A colour is written as # and six hexadecimal digits.',
    advice: 'Write it like "#ffb040": two digits each for red, green and blue.',
  },
  'gradient-order': {
    message: 'The stops of a gradient are sorted by "at".',
    advice: 'Put the stops in rising order, from 0 to 1.',
  },
  'keys-order': {
    message: 'Keyframes stand in order of time, each later than the one before.',
    advice: 'Sort them by "atMilliseconds", and keep one of two at the same time.',
  },
  'zone-nesting': {
    message: 'Sources of a zone nest at most 8 deep, and the innermost is "all", "run" or "range".',
    advice: 'Choose one of these here, or make the zone from fewer steps.',
  },
  'parameter-identifier': {
    message: 'A parameter name is a GLSL identifier of at most 32 characters.',
    advice: 'Use letters and digits, beginning with a letter; "label" may be any text.',
  },
} as const;

export type RuleName = keyof typeof rules;

export function isRuleName(text: string): text is RuleName {
  return Object.hasOwn(rules, text);
}
