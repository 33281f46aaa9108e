/** Before another piece takes the place of work that is in no file, the maker is asked. */
import { Store } from './store.ts';

export type LeaveAnswer = 'save' | 'let-go' | 'stay';

export class Leaving {
  /** The question that is open, as the way to answer it. */
  readonly question = new Store<((answer: LeaveAnswer) => void) | null>(null);

  ask(): Promise<LeaveAnswer> {
    // Whoever asks anew has thought of something else.
    this.question.get()?.('stay');
    return new Promise((resolve) => {
      this.question.set((answer) => {
        this.question.set(null);
        resolve(answer);
      });
    });
  }
}
