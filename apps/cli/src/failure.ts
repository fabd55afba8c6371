/** What the command answers to the shell; see `runback --help`. */
export const EXIT = { ok: 0, failed: 1, notUnderstood: 2, notWritten: 3 } as const;

/** A failure with the words for the person and the code for the shell. */
export class Failure extends Error {
  readonly code: number;

  constructor(message: string, code: number) {
    super(message);
    this.code = code;
  }
}
