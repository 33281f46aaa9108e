/** A word explained where it stands: a small round button that opens one or two plain sentences. */
import { Popover } from '@base-ui/react/popover';
import type { ReactNode } from 'react';
import '../styles/ask.css';

/** @param about what the sentences are about, in the words of the page */
export function Ask({ about, children }: { about: string; children: ReactNode }) {
  return (
    <Popover.Root>
      <Popover.Trigger className="ask" aria-label={`About ${about}`}>
        ?
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Positioner className="ask-place" sideOffset={6} collisionPadding={12}>
          <Popover.Popup className="ask-answer">
            <Popover.Description>{children}</Popover.Description>
          </Popover.Popup>
        </Popover.Positioner>
      </Popover.Portal>
    </Popover.Root>
  );
}
