/** The world outside a command, so that tests can be one. */
export interface Terminal {
  /** Folder that relative paths start from. */
  readonly folder: string;
  /** Standard output, as it is. */
  print(text: string): void;
  /** Standard error, as it is. */
  complain(text: string): void;
}

export const exitCodes = {
  fine: 0,
  /** The piece has errors, or a rehearsal found a fault. */
  faulty: 1,
  /** Unknown command, option, look or board; a file that is not there. */
  wrongUsage: 2,
} as const;
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

export interface Command {
  /** What follows the command's name. */
  readonly usage: string;
  /** In one line. */
  readonly does: string;
  /** What the options mean, one a line; empty if there are none. */
  readonly options: readonly (readonly [option: string, meaning: string])[];
  run(words: readonly string[], terminal: Terminal): Promise<ExitCode>;
}
