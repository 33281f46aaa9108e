/** What edits are called, for the names of steps that can be undone: `Move run rim`. */
import { findLibraryPattern } from '../pattern/library.ts';
import type { Piece } from '../piece/schema.ts';
import type { Changes } from './changes.ts';
import type { Edit, EditKind, EditOf } from './edit.ts';
import type { ClipAddress } from './kinds/addresses.ts';
import type { Side } from './kinds/runs.ts';
import { clipSpot, trackSpot } from './shelves.ts';

/** @param piece as it is before the edit, as clips have no name but that of their pattern */
export function titleOf(edit: Edit, piece: Piece): string {
  return (titles[edit.kind] as (edit: Edit, piece: Piece) => string)(edit, piece);
}

const titles: { readonly [Kind in EditKind]: (edit: EditOf<Kind>, piece: Piece) => string } = {
  together: ({ name }) => name,

  'set-piece': ({ set }) => {
    if (set.name !== undefined) return `Name the piece ${set.name}`;
    return `Set ${fields(set, { name: 'name', board: 'board', tickMilliseconds: 'tick' })}`;
  },
  'set-line': ({ set }) => `Set ${fields(set, { pin: 'pin', part: 'part' })} of the line`,
  'set-output': ({ set }) =>
    `Set ${fields(set, { startBrightness: 'start brightness', curve: 'curve of light', balance: 'balance' })}`,
  'set-supply': ({ set }) =>
    `Set ${fields(set, { limitMilliamps: 'limit', volts: 'volts', keepAliveMilliamps: 'keep-alive' })} of the supply`,
  'set-controls': ({ set }) =>
    `Set ${fields(set, {
      debounceMilliseconds: 'debounce time',
      holdMilliseconds: 'hold time',
      doubleMilliseconds: 'time for a double press',
      caughtMilliseconds: 'time until caught',
      brightnessSteps: 'brightness steps',
    })}`,

  'add-run': ({ run }) => `Add run ${run.name}`,
  'remove-run': ({ run }) => `Remove run ${run}`,
  'duplicate-run': ({ run }) => `Duplicate run ${run}`,
  'reorder-run': ({ run }) => `Reorder run ${run}`,
  'rename-run': ({ run, name }) => `Rename run ${run} to ${name}`,
  'set-run': ({ run, set }) =>
    `Set ${fields(set, {
      flat: 'flat shape',
      worn: 'worn shape',
      removed: 'removed pixels',
      hidden: 'hidden pixels',
    })} of run ${run}`,
  'move-runs': ({ runs, side }) => `Move ${runsInWords(runs, side)}`,
  'turn-runs': ({ runs, side }) => `Turn ${runsInWords(runs, side)}`,
  'scale-runs': ({ runs, side }) => `Scale ${runsInWords(runs, side)}`,
  'mirror-runs': ({ runs, side }) => `Mirror ${runsInWords(runs, side)}`,

  'add-zone': ({ zone }) => `Add zone ${zone.name}`,
  'remove-zone': ({ zone }) => `Remove zone ${zone}`,
  'reorder-zone': ({ zone }) => `Reorder zone ${zone}`,
  'rename-zone': ({ zone, name }) => `Rename zone ${zone} to ${name}`,
  'set-zone': ({ zone }) => `Set pixels of zone ${zone}`,

  'add-pattern': ({ pattern }) => `Add pattern ${pattern.name}`,
  'remove-pattern': ({ pattern }) => `Remove pattern ${pattern}`,
  'reorder-pattern': ({ pattern }) => `Reorder pattern ${pattern}`,
  'rename-pattern': ({ pattern, name }) => `Rename pattern ${pattern} to ${name}`,
  'set-pattern': ({ pattern, set }) =>
    `Set ${fields(set, { source: 'source', parameters: 'parameters' })} of pattern ${pattern}`,

  'add-look': ({ look }) => `Add look ${look.name}`,
  'remove-look': ({ look }) => `Remove look ${look}`,
  'duplicate-look': ({ look }) => `Duplicate look ${look}`,
  'reorder-look': ({ look }) => `Reorder look ${look}`,
  'rename-look': ({ look, name }) => `Rename look ${look} to ${name}`,
  'set-look': ({ look, set }) =>
    `Set ${fields(set, {
      lengthMilliseconds: 'length',
      dissolveMilliseconds: 'dissolve',
      moveOn: 'move-on',
    })} of look ${look}`,

  'add-track': ({ at }) => `Add track to look ${at.look}`,
  'remove-track': ({ at }, piece) => `Remove track ${trackInWords(piece, at)}`,
  'reorder-track': ({ at }, piece) => `Reorder track ${trackInWords(piece, at)}`,
  'set-track': ({ at, set }, piece) =>
    typeof set.name === 'string'
      ? `Rename track ${trackInWords(piece, at)} to ${set.name}`
      : `Unname track ${trackInWords(piece, at)}`,

  'add-clip': ({ clip }) => `Add ${patternInWords(clip.pattern)}`,
  'remove-clip': ({ at }, piece) => `Remove ${clipInWords(piece, at)}`,
  'duplicate-clip': ({ at }, piece) => `Duplicate ${clipInWords(piece, at)}`,
  'move-clip': ({ at }, piece) => `Move ${clipInWords(piece, at)}`,
  'trim-clip': ({ at }, piece) => `Trim ${clipInWords(piece, at)}`,
  'split-clip': ({ at }, piece) => `Split ${clipInWords(piece, at)}`,
  'set-clip': ({ at, set }, piece) =>
    `Set ${fields(set, {
      pattern: 'pattern',
      zone: 'zone',
      startMilliseconds: 'start',
      lengthMilliseconds: 'length',
      endless: 'endless',
      opacity: 'opacity',
      blend: 'blend',
      fadeInMilliseconds: 'fade-in',
      fadeOutMilliseconds: 'fade-out',
      seed: 'seed',
      parameters: 'parameters',
    })} of ${clipInWords(piece, at)}`,
  'set-parameter': ({ at, parameter, value }, piece) =>
    `${value === null ? 'Reset' : 'Set'} ${parameterInWords(piece, at, parameter)}`,

  'add-key': ({ at, parameter }, piece) => `Add key to ${parameterInWords(piece, at, parameter)}`,
  'remove-key': ({ at, parameter }, piece) => `Remove key from ${parameterInWords(piece, at, parameter)}`,
  'move-key': ({ at, parameter }, piece) => `Move key of ${parameterInWords(piece, at, parameter)}`,
  'set-key': ({ at, parameter, set }, piece) =>
    `Set ${fields(set, { value: 'key', easing: 'easing' })} of ${parameterInWords(piece, at, parameter)}`,

  'add-button': ({ button }) => `Add button ${button.name}`,
  'remove-button': ({ button }) => `Remove button ${button}`,
  'reorder-button': ({ button }) => `Reorder button ${button}`,
  'rename-button': ({ button, name }) => `Rename button ${button} to ${name}`,
  'set-button': ({ button, set }) =>
    `Set ${fields(set, { pin: 'pin', press: 'press', hold: 'hold', double: 'double press' })} of button ${button}`,
};

/** The fields that change, in the order of the words, which name every field there is. */
function fields<Set extends Changes<object>>(set: Set, words: Readonly<Record<keyof Set, string>>): string {
  const changed = Object.entries<string>(words).filter(([field]) => Object.hasOwn(set, field));
  const [last, ...others] = changed.map(([, word]) => word).reverse();
  if (last === undefined) return 'nothing';
  return others.length === 0 ? last : `${others.reverse().join(', ')} and ${last}`;
}

function runsInWords(runs: readonly string[], side: Side): string {
  const what = runs.length === 1 ? `run ${runs[0]}` : `${runs.length} runs`;
  return side === 'worn' ? `${what} as worn` : what;
}

function trackInWords(piece: Piece, at: { readonly look: string; readonly track: number }): string {
  return trackSpot(piece, at).value?.item.name ?? String(at.track + 1);
}

/** A pattern by its title. A piece's own has only its name. */
function patternInWords(pattern: string): string {
  return findLibraryPattern(pattern)?.title ?? pattern;
}

function clipInWords(piece: Piece, at: ClipAddress): string {
  const clip = clipSpot(piece, at).value?.item;
  return clip === undefined ? 'clip' : patternInWords(clip.pattern);
}

/** `period of Millrace`. By its name, as labels are no part of a sentence: "Once round". */
function parameterInWords(piece: Piece, at: ClipAddress, parameter: string): string {
  return `${parameter} of ${clipInWords(piece, at)}`;
}
