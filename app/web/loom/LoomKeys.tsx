/** The keys of a clip, for whoever asks. */
import { Ask } from '../shell/Ask.tsx';

export function LoomKeys() {
  return (
    <Ask about="clips" question="How is a clip moved and shaped?">
      Pull a clip to move it, its upper or lower edge to trim it, the small corners to fade it. Alt lets it
      lie anywhere. By keys: arrows move it and page keys do in larger steps; with Alt they move its end, with
      Alt and Shift its start. I and O draw its fades longer, with Shift shorter. S splits it at the shuttle,
      Delete removes it, comma and full stop walk along its pixels.
    </Ask>
  );
}
