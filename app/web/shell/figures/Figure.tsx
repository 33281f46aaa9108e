/** A figure with its name, and the question what it is made of. */
import type { ReactNode } from 'react';

interface Props {
  readonly name: ReactNode;
  readonly answer?: ReactNode;
  readonly className?: string;
  readonly children: ReactNode;
}

export function Figure({ name, answer, className, children }: Props) {
  return (
    <div className={className}>
      <dt>
        {name}
        {answer}
      </dt>
      <dd>{children}</dd>
    </div>
  );
}
