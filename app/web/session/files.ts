/** Files in and out: samples, the maker's own, and what is handed back. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { fileStem } from './file-name.ts';
import type { Session } from './session.ts';

/** Nothing a maker draws comes near; a film dropped by mistake should not be read into memory. */
const mostBytes = 20_000_000;

const sampleTexts = import.meta.glob<string>('../../../samples/*.piece.json', {
  query: '?raw',
  import: 'default',
});

export interface Sample {
  readonly fileName: string;
  /** From the file's name: `Ferrymans hat`. */
  readonly title: string;
  readonly load: () => Promise<string>;
}

export const samples: readonly Sample[] = Object.entries(sampleTexts).map(([path, load]) => {
  const fileName = path.split('/').at(-1)!;
  const words = fileName.replace('.piece.json', '').replaceAll('-', ' ');
  return { fileName, title: words.charAt(0).toUpperCase() + words.slice(1), load };
});

export async function openSample(session: Session, sample: Sample): Promise<boolean> {
  const text = await sample.load();
  return (await mayLeave(session)) && session.open(sample.fileName, text, { origin: 'sample' });
}

export async function openFile(session: Session, file: File): Promise<boolean> {
  if (file.size > mostBytes) {
    session.refuse(file.name, tooLarge(file.size));
    return false;
  }
  const text = await file.text();
  return (await mayLeave(session)) && session.open(file.name, text);
}

/** Puts a piece of the first answers on the bench. */
export async function openNew(session: Session, piece: Piece): Promise<boolean> {
  if (!(await mayLeave(session))) return false;
  return session.open(`${fileStem(piece)}.piece.json`, JSON.stringify(piece), { origin: 'answers' });
}

/** Whether another piece may take the place of the open one: work that is in no file is asked for first. */
async function mayLeave(session: Session): Promise<boolean> {
  if (session.bench.get().open?.unsaved !== true) return true;
  const answer = await session.leaving.ask();
  if (answer === 'save') savePiece(session);
  return answer !== 'stay';
}

function tooLarge(bytes: number): Diagnostic {
  return {
    code: 'file-too-large',
    severity: 'error',
    message: `The file has ${Math.round(bytes / 1e6)} MB; a piece has a few kilobytes.`,
    advice: 'Choose a file whose name ends in .piece.json.',
  };
}

export function savePiece(session: Session): void {
  const { open } = session.bench.get();
  if (open === null) return;
  handOver(
    `${fileStem(open.piece)}.piece.json`,
    `${JSON.stringify(open.piece, null, 2)}\n`,
    'application/json',
  );
  session.markSaved();
}

/** A download, made on the page itself: nothing is sent anywhere. */
export function handOver(fileName: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // The browser reads it after the click has returned.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
