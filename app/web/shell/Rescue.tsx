/** If the page itself breaks, the maker's work is not lost with it. */
import { Component, type ReactNode } from 'react';
import { SessionContext } from '../session/context.ts';
import { savePiece } from '../session/files.ts';

interface State {
  readonly broken: string | null;
}

export class Rescue extends Component<{ readonly children: ReactNode }, State> {
  static override readonly contextType = SessionContext;
  declare readonly context: React.ContextType<typeof SessionContext>;
  override readonly state: State = { broken: null };

  static getDerivedStateFromError(error: unknown): State {
    return { broken: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.broken === null) return this.props.children;
    const session = this.context;
    return (
      <main className="rescue" role="alert">
        <h1>The page has broken, your piece has not</h1>
        <p>Save the piece, then load the page again and open it.</p>
        <p className="whisper">{this.state.broken}</p>
        {session !== null && (
          <button type="button" onClick={() => savePiece(session)}>
            Save the piece
          </button>
        )}
      </main>
    );
  }
}
