/** A part of the tag that can be folded away. It stays as it was left while the bench is open. */
import type { ReactNode } from 'react';

interface Props {
  readonly title: string;
  /** Folded open at first. */
  readonly open?: boolean;
  readonly children: ReactNode;
}

export function Section({ title, open = false, children }: Props) {
  return (
    <details className="tag-section" open={open}>
      <summary>{title}</summary>
      <div className="tag-section-body">{children}</div>
    </details>
  );
}
