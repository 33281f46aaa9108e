/** Whether a key goes into a text or a number that is being written, or chooses from a list by its letter. */
const writing = [
  'textarea',
  'select',
  '.monaco-editor',
  '[contenteditable="true"]',
  'input:not([type="range"], [type="checkbox"], [type="radio"], [type="button"], [type="color"], [type="file"])',
].join(', ');

export function isWriting(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest(writing) !== null;
}
