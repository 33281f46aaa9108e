/** Opens the page with the first sample on the bench. */
import { createRoot } from 'react-dom/client';
import { SessionContext } from './session/context.ts';
import { openSample, samples } from './session/files.ts';
import { Session } from './session/session.ts';
import { Page } from './shell/Page.tsx';
import { Rescue } from './shell/Rescue.tsx';
import './styles/tokens.css';
import './styles/base.css';
import './styles/controls.css';
import './styles/house.css';
import './styles/ask.css';
import './styles/picture.css';
import './styles/thread.css';
import './styles/cloth.css';
import './styles/loom.css';
import './styles/tag.css';
import './styles/swatches.css';
import './styles/tag-colour.css';
import './styles/course.css';
import './styles/place.css';
import './styles/code.css';
import './styles/small.css';
import './styles/tag-small.css';

const wantsStillness = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
const session = new Session(wantsStillness);
const first = samples.find(({ fileName }) => fileName.startsWith('jellyfish')) ?? samples[0];
if (first !== undefined) void openSample(session, first);

createRoot(document.getElementById('page')!).render(
  <SessionContext value={session}>
    <Rescue>
      <Page />
    </Rescue>
  </SessionContext>,
);
