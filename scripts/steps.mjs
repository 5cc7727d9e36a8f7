// The report of a start: one line a step, with its time. src/platform/steps.ts writes the same form once the program is built.

/** Something that a person has to put right: printed without a stack, with what to do. */
export class StepError extends Error {
  constructor(message, advice) {
    super(message);
    this.advice = advice;
  }
}

export function stepLine(state, label, milliseconds, note = '') {
  return `${state.padEnd(7)} ${label.padEnd(18)} ${(milliseconds / 1000).toFixed(1)} s${note ? `   ${note}` : ''}`;
}

/**
 * Does one step and prints its line. A text that the work returns becomes the line's note.
 * @param {string} label
 * @param {() => unknown} work
 * @param {(line: string) => void} print
 */
export async function step(label, work, print = console.log) {
  const begun = performance.now();
  try {
    const note = await work();
    print(stepLine('ok', label, performance.now() - begun, typeof note === 'string' ? note : ''));
  } catch (error) {
    print(stepLine('failed', label, performance.now() - begun));
    throw error;
  }
}

/** Runs a script's main work; what a person has to put right is printed with advice, and the exit code is 1. */
export async function runScript(work) {
  try {
    await work();
  } catch (error) {
    if (error instanceof StepError) console.error(`        ${error.message}\n        What to do: ${error.advice}`);
    else console.error(error);
    process.exitCode = 1;
  }
}
