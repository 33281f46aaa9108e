/** Opens the page with the first sample on the bench. */
import { createRoot } from 'react-dom/client';
import { SessionContext } from './session/context.ts';
import { openSample, samples } from './session/files.ts';
import { browserShelf, Keeper } from './session/keeper.ts';
import type { Kept } from './session/keeping.ts';
import { Session } from './session/session.ts';
import { claimTab } from './session/tab.ts';
import { sinceWords } from './session/when.ts';
import { Page } from './shell/Page.tsx';
import { Rescue } from './shell/Rescue.tsx';
import './styles/tokens.css';
import './styles/base.css';
import './styles/controls.css';
import './styles/house.css';
import './styles/ask.css';
import './styles/picture.css';
import './styles/start.css';
import './styles/dialogs.css';
import './styles/thread.css';
import './styles/cloth.css';
import './styles/loom.css';
import './styles/tag.css';
import './styles/swatches.css';
import './styles/controls-editor.css';
import './styles/tag-colour.css';
import './styles/course.css';
import './styles/place.css';
import './styles/code.css';
import './styles/small.css';
import './styles/tag-small.css';

const wantsStillness = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
const session = new Session(wantsStillness);
void openFirst();

createRoot(document.getElementById('page')!).render(
  <SessionContext value={session}>
    <Rescue>
      <Page />
    </Rescue>
  </SessionContext>,
);

/** What was on the bench before, or else a sample. */
async function openFirst(): Promise<void> {
  const keeper = new Keeper(session, browserShelf(), await claimTab());
  const kept = await keeper.find();
  const taken = kept !== null && (await takeUp(kept));
  const first = samples.find(({ fileName }) => fileName.startsWith('jellyfish')) ?? samples[0];
  if (!taken && first !== undefined) await openSample(session, first);
  keeper.start();
}

async function takeUp({ text, history, unsaved, at }: Kept): Promise<boolean> {
  const arrival = { origin: 'kept', history, unsaved } as const;
  if (!(await session.open('The piece that was kept here', text, arrival))) return false;
  session.keptFrom.set(sinceWords(new Date(at), new Date()));
  return true;
}
