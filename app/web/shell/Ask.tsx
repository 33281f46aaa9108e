/** A small round question beside a word: whoever presses it is told in a sentence or two what it means. */
import { lazy, type ReactNode, Suspense, useRef, useState } from 'react';

export interface AskProps {
  /** The word in question: for `zone` the button is named "What is a zone?", for several words "About ...". */
  readonly about: string;
  /** Another wording of the question, such as "What is peak made of?". */
  readonly question?: string;
  /** The answer: one or two plain sentences. */
  readonly children: ReactNode;
}

/** The panel and its kit come with the first question. */
const fetchAnswer = () => import('./Answer.tsx');
const Answer = lazy(() => fetchAnswer().then(({ Answer }) => ({ default: Answer })));

export function Ask({ about, question = questionAbout(about), children }: AskProps) {
  const button = useRef<HTMLButtonElement>(null);
  const [asked, setAsked] = useState(false);
  const [open, setOpen] = useState(false);
  return (
    <>
      <button
        ref={button}
        type="button"
        className="ask"
        aria-label={question}
        aria-haspopup="dialog"
        aria-expanded={open}
        title={open ? undefined : question}
        onPointerEnter={() => void fetchAnswer()}
        onFocus={() => void fetchAnswer()}
        onClick={() => {
          setAsked(true);
          setOpen(!open);
        }}
      >
        <span aria-hidden="true">?</span>
      </button>
      {asked && (
        <Suspense>
          <Answer button={button} question={question} open={open} onOpen={setOpen}>
            {children}
          </Answer>
        </Suspense>
      )}
    </>
  );
}

function questionAbout(words: string): string {
  if (words.includes(' ')) return `About ${words}`;
  return `What is ${/^[aeiou]/i.test(words) ? 'an' : 'a'} ${words}?`;
}
