// The benchmark's parts run in processes of their own, so that each one's processor time can be read. They take tasks by message.
import { fork } from 'node:child_process';

/**
 * @typedef {object} Child
 * @property {number} pid
 * @property {(task: string, data?: unknown) => Promise<any>} ask does a task of the child and returns what it returned
 * @property {() => Promise<void>} end
 */

/**
 * Starts a part.
 * @param {URL} file the part's module, which calls answerTasks
 * @param {string[]} execArgv options for Node itself
 * @returns {Child}
 */
export function startChild(file, execArgv = []) {
  const child = fork(file, [], { execArgv, stdio: ['ignore', 'inherit', 'inherit', 'ipc'] });
  const waiting = new Map();
  let count = 0;
  const ended = new Promise((resolve) => {
    child.once('exit', (code) => {
      for (const { reject } of waiting.values()) reject(new Error(`${file.pathname} ended with ${code}.`));
      resolve();
    });
  });
  child.on('message', ({ id, result, error }) => {
    const { resolve, reject } = waiting.get(id);
    waiting.delete(id);
    if (error === undefined) resolve(result);
    else reject(new Error(error));
  });
  const ask = (task, data) =>
    new Promise((resolve, reject) => {
      count += 1;
      waiting.set(count, { resolve, reject });
      child.send({ id: count, task, data });
    });
  const end = () => {
    if (child.connected) child.disconnect();
    return ended;
  };
  return { pid: child.pid, ask, end };
}

/**
 * In the part: does the tasks it is asked for until the parent lets go, or ends in whatever way.
 * @param {Record<string, (data: any) => unknown>} tasks
 */
export function answerTasks(tasks) {
  process.on('message', async ({ id, task, data }) => {
    try {
      process.send({ id, result: await tasks[task](data) });
    } catch (error) {
      process.send({ id, error: error.stack ?? String(error) });
    }
  });
  process.on('disconnect', () => process.exit());
  // Ctrl-C reaches the whole family; the parent lets go of the others in its own order.
  process.on('SIGINT', () => undefined);
}
