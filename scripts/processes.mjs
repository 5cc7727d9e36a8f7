import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

// Not import.meta.dirname: an old Node must get as far as the step that says it is too old.
export const projectFolder = fileURLToPath(new URL('..', import.meta.url));

/**
 * Runs a program to its end.
 * @param {string} program
 * @param {string[]} args
 * @param {{ env?: Record<string, string | undefined>, show?: boolean }} options show: print what it prints as it goes
 * @returns {Promise<{ code: number, output: string }>}
 */
export function run(program, args, { env = {}, show = false } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: projectFolder,
      env: { ...process.env, ...env },
      stdio: show ? 'inherit' : ['ignore', 'pipe', 'pipe'],
      // npm is a script there, which only a shell can run.
      shell: process.platform === 'win32' && program === 'npm',
    });
    let output = '';
    child.stdout?.setEncoding('utf8').on('data', (text) => (output += text));
    child.stderr?.setEncoding('utf8').on('data', (text) => (output += text));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code: code ?? 1, output: output.trim() }));
  });
}

/** Runs a tool of node_modules with this same Node. `file` is its script, relative to node_modules. */
export function runTool(file, args, options) {
  return run(process.execPath, [join(projectFolder, 'node_modules', file), ...args], options);
}

/** The last lines of a program's output, for a message. */
export function tail(output, lines = 8) {
  return output.split('\n').slice(-lines).join('\n        ');
}
