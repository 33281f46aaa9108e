/** The panel with the answer, at the button that asked. */
import { Popover } from '@base-ui/react/popover';
import type { ReactNode, RefObject } from 'react';

interface Props {
  readonly button: RefObject<HTMLButtonElement | null>;
  readonly question: string;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly children: ReactNode;
}

export function Answer({ button, question, open, onOpen, children }: Props) {
  return (
    <Popover.Root
      open={open}
      onOpenChange={(next, { reason, event }) => {
        // The button that asked closes its answer by itself.
        const own = event.target instanceof Node && button.current?.contains(event.target);
        if (reason !== 'outside-press' || own !== true) onOpen(next);
      }}
    >
      {/* Behind an open dialog nothing can be read or reached, so an answer asked for in it stays in it. */}
      <Popover.Portal container={button.current?.closest('dialog') ?? undefined}>
        <Popover.Positioner className="answer-place" anchor={button} sideOffset={6} collisionPadding={12}>
          <Popover.Popup className="answer" finalFocus={button}>
            <Popover.Title className="answer-title">{question}</Popover.Title>
            <Popover.Description className="answer-text" render={<div />}>
              {children}
            </Popover.Description>
          </Popover.Popup>
        </Popover.Positioner>
      </Popover.Portal>
    </Popover.Root>
  );
}
