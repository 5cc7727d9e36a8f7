import { SetUpError, explain } from './set-up-error.js';

/** One line of the start's report: how it went, what, and how long it took. `scripts/steps.mjs` writes the same form. */
function stepLine(state: 'ok' | 'skip' | 'failed', label: string, milliseconds: number, note = ''): string {
  return `${state.padEnd(7)} ${label.padEnd(18)} ${(milliseconds / 1000).toFixed(1)} s${note ? `   ${note}` : ''}`;
}

/**
 * Does one step of the start and prints its line to standard output. What the work returns may name a note for the line.
 * @throws what the work throws, after the line; a SetUpError is printed with its advice
 */
export async function step<T>(label: string, work: () => Promise<T>, note?: (result: T) => string): Promise<T> {
  const begun = performance.now();
  try {
    const result = await work();
    console.log(stepLine('ok', label, performance.now() - begun, note?.(result)));
    return result;
  } catch (error) {
    console.log(stepLine('failed', label, performance.now() - begun));
    console.error(`        ${explain(error)}`);
    if (error instanceof SetUpError) console.error(`        What to do: ${error.advice}`);
    throw error;
  }
}
