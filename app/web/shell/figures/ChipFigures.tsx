/** Estimates of the chosen board; nothing where they are not known. */
import { chips } from '../../../../engine/parts/chips.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { Ask } from '../Ask.tsx';
import { Figure } from './Figure.tsx';

export function ChipFigures() {
  const session = useSession();
  const { sketch, board } = useStore(session.loft.sketch);
  const estimate = sketch?.estimate;
  if (estimate == null || board === null) return null;
  const { flashBytes, ramBytes, title } = chips[board];
  const frames = estimate.framesPerSecond;
  return (
    <>
      <Figure
        className="of-chip"
        name={
          <>
            <span className="about">program </span>memory
          </>
        }
        answer={
          <Ask about="program memory" question="What is program memory made of?">
            The sketch and its tables, by estimate on the {title}: about {kilobytes(estimate.flashBytes)}
            {flashBytes === null ? '' : ` of ${kilobytes(flashBytes)}`}. Beside it the sketch works in{' '}
            {kilobytes(estimate.ramBytes)}
            {ramBytes === null ? '' : ` of ${kilobytes(ramBytes)}`} of RAM, 3 bytes a pixel among it. More
            patterns and more clips take more.
          </Ask>
        }
      >
        {kilobytes(estimate.flashBytes)}
        {flashBytes !== null && <span className="about"> of {kilobytes(flashBytes)}</span>}
      </Figure>
      <Figure
        className="of-chip"
        name="frame"
        answer={
          <Ask about="a frame" question="What is a frame’s time made of?">
            Working out every pixel of the slowest look and sending them down the line: about{' '}
            {(1000 / frames).toFixed(1)} ms on the {title} by estimate, so {frames.toFixed(0)} pictures a
            second. A pixel takes {estimate.cyclesPerPixel.toFixed(0)} steps of the chip’s clock. Below 25 a
            second motion begins to stutter.
          </Ask>
        }
      >
        {(1000 / frames).toFixed(1)} ms
      </Figure>
    </>
  );
}

function kilobytes(bytes: number): string {
  return `${Number((bytes / 1024).toFixed(1))} KB`;
}
