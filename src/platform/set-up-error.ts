/**
 * Something outside the program stands in the way of starting: a folder, a setting, a database. `message` says what
 * and where, `advice` says what to do. Whoever runs the server reads both, so it is printed without a stack.
 */
export class SetUpError extends Error {
  override readonly name = 'SetUpError';
  readonly advice: string;

  constructor(message: string, advice: string, options?: ErrorOptions) {
    super(message, options);
    this.advice = advice;
  }
}

/** The text of any thrown value, fit for one line of a terminal. */
export function explain(error: unknown): string {
  // A name that stands for several addresses fails once for each of them, and the whole has no message.
  if (error instanceof AggregateError && error.message === '') return explain(error.errors[0]);
  return error instanceof Error ? error.message || error.name : String(error);
}

/** The code of a system or database error (`ENOSPC`, `57P01`), or '' when it has none. */
export function codeOf(error: unknown): string {
  const code = (error as { code?: unknown } | null | undefined)?.code;
  return typeof code === 'string' ? code : '';
}
