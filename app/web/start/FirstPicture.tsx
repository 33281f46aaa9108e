/** What the answers amount to: the first run as a drawing, and what it would draw. */
import { pixelPlaces } from '../../../engine/layout/shapes.ts';
import { fitPlaces } from '../picture/fit.ts';
import { milliamps } from '../session/words.ts';
import { type Answers, firstShape, fullMilliamps, pixelCount } from './answers.ts';

const size = 220;

export function FirstPicture({ answers }: { answers: Answers }) {
  const places = pixelPlaces(firstShape(answers)).flatMap(({ x, y }) => [x, y]);
  const { spots, pitch } = fitPlaces(Float32Array.from(places), size, size);
  const radius = Math.min(5, Math.max(1, pitch / 3.5));
  const count = pixelCount(answers);
  const full = fullMilliamps(answers);
  const dims = full > answers.milliamps;
  return (
    <figure className="first-picture">
      <svg viewBox={`0 0 ${size} ${size}`} aria-hidden="true">
        {Array.from({ length: count }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: pixels are told apart by their rank alone
          <circle key={i} cx={spots[2 * i]!} cy={spots[2 * i + 1]!} r={radius} data-first={i === 0} />
        ))}
      </svg>
      <figcaption>
        <b>{count === 1 ? '1 pixel' : `${count} pixels`}</b>, {milliamps(full)} if all of them shine white.{' '}
        {dims
          ? `The piece dims itself before it draws more than ${milliamps(answers.milliamps)}.`
          : `Your supply gives ${milliamps(answers.milliamps)}: enough.`}
      </figcaption>
    </figure>
  );
}
