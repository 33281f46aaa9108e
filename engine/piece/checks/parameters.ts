/** The parameters that a clip sets: known to the pattern, of its kind, and inside its range. */
import type { Findings } from '../findings.ts';
import { meantInstead } from '../nearest.ts';
import type { ParameterDescription, ParameterValue } from '../schema.ts';
import { clipped, shown } from '../wording.ts';

type Kind = ParameterDescription['kind'];

/** What may be written for each kind; a clip that moves it over time writes keys instead of a value. */
const forms: Record<
  Kind,
  { readonly name: string; readonly typeOf: (value: unknown) => boolean; readonly keyed: boolean }
> = {
  number: { name: 'a number', typeOf: (value) => typeof value === 'number', keyed: true },
  whole: { name: 'a whole number', typeOf: Number.isInteger, keyed: true },
  'yes-no': { name: 'true or false', typeOf: (value) => typeof value === 'boolean', keyed: false },
  colour: { name: 'a colour', typeOf: (value) => typeof value === 'string', keyed: true },
  gradient: { name: 'a list of stops', typeOf: Array.isArray, keyed: false },
};

export function checkParameters(
  values: Readonly<Record<string, ParameterValue>>,
  parameters: readonly ParameterDescription[],
  path: string,
  findings: Findings,
): void {
  for (const [name, value] of Object.entries(values)) {
    const parameter = parameters.find((candidate) => candidate.name === name);
    const valuePath = `${path}.${name}`;
    if (parameter === undefined) {
      const message = `The pattern has no parameter "${clipped(name)}".`;
      const names = parameters.map((candidate) => candidate.name);
      findings.error('parameter-unknown', valuePath, message, () => meantInstead(name, names));
    } else if (typeof value === 'object' && !Array.isArray(value)) {
      checkKeys(value.keys, parameter, valuePath, findings);
    } else {
      checkValue(value, parameter, valuePath, findings);
    }
  }
}

function checkKeys(
  keys: readonly { readonly value: unknown }[],
  parameter: ParameterDescription,
  path: string,
  findings: Findings,
): void {
  if (!forms[parameter.kind].keyed) {
    const message = `The parameter "${parameter.name}" does not move over time.`;
    findings.error('parameter-kind', path, message, `Write ${forms[parameter.kind].name} without keys.`);
    return;
  }
  for (const [i, { value }] of keys.entries()) {
    checkValue(value, parameter, `${path}.keys[${i}].value`, findings);
  }
}

function checkValue(value: unknown, parameter: ParameterDescription, path: string, findings: Findings): void {
  const { name, typeOf } = forms[parameter.kind];
  if (!typeOf(value)) {
    const message = `The parameter "${parameter.name}" is ${name}, but here stands ${shown(value)}.`;
    findings.error('parameter-kind', path, message, `Write ${name}.`);
  } else if (
    'min' in parameter &&
    typeof value === 'number' &&
    (value < parameter.min || value > parameter.max)
  ) {
    const message = `The parameter "${parameter.name}" cannot be ${value}.`;
    findings.error('parameter-range', path, message, `Choose ${parameter.min} to ${parameter.max}.`);
  }
}
