/** The piece's own patterns, as far as that shows without compiling them. */

import { libraryPatterns } from '../../pattern/library.ts';
import { utf8Length } from '../../utf8.ts';
import type { Findings } from '../findings.ts';
import { limits } from '../limits.ts';
import type { ParameterDescription, Piece } from '../schema.ts';
import { clipped } from '../wording.ts';

/** Parameters of every pattern that a clip of the piece may name. */
export function patternsKnownTo(piece: Piece): Map<string, readonly ParameterDescription[]> {
  return new Map([
    ...libraryPatterns.map(({ name, revision, parameters }) => [`${name}/${revision}`, parameters] as const),
    ...piece.patterns.map(({ name, parameters }) => [name, parameters] as const),
  ]);
}

export function checkPatterns(piece: Piece, findings: Findings): void {
  for (const [i, pattern] of piece.patterns.entries()) {
    const path = `patterns[${i}]`;
    if (/\/[0-9]+$/.test(pattern.name)) {
      const message = `The name "${clipped(pattern.name)}" is one of the library's, with a revision.`;
      findings.error('pattern-name-reserved', `${path}.name`, message, 'Leave out the slash and the number.');
    }
    const bytes = utf8Length(pattern.source);
    if (bytes > limits.patternBytes) {
      const message = `The source has ${bytes} bytes, but ${limits.patternBytes} are allowed.`;
      findings.error(
        'pattern-too-long',
        `${path}.source`,
        message,
        'Shorten it, or split it into two patterns.',
      );
    }
    checkDescriptions(pattern.parameters, `${path}.parameters`, findings);
  }
}

function checkDescriptions(
  parameters: readonly ParameterDescription[],
  path: string,
  findings: Findings,
): void {
  const names = new Set<string>();
  for (const [i, parameter] of parameters.entries()) {
    if (names.has(parameter.name)) {
      const message = `There are two parameters "${parameter.name}".`;
      findings.error('name-twice', `${path}[${i}].name`, message, 'Choose another name for one of them.');
    }
    names.add(parameter.name);
    if (!('min' in parameter)) continue;
    const { min, max, default: usual } = parameter;
    if (min > max) {
      findings.error(
        'range-reversed',
        `${path}[${i}].min`,
        `The range ${min} to ${max} is empty.`,
        'Swap the two.',
      );
    } else if (usual < min || usual > max) {
      const message = `The default ${usual} lies outside of ${min} to ${max}.`;
      findings.error(
        'parameter-range',
        `${path}[${i}].default`,
        message,
        'Choose one inside, or widen the range.',
      );
    }
  }
}
