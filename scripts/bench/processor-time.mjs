// Processor time of processes, as Linux tells it under /proc. Other systems have no /proc: then there are no figures.
import { readFile, readdir } from 'node:fs/promises';

/** Linux counts in hundredths of a second towards programs, whatever it does inside. */
const tickMs = 10;

/** The fields after the name, which stands in brackets and may hold anything: state, parent, … as proc(5) numbers them from 3. */
async function fieldsOf(pid) {
  const text = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => null);
  return text === null ? null : text.slice(text.lastIndexOf(')') + 2).split(' ');
}

/** utime and stime (14, 15); for a parent also those of children that have ended (16, 17). */
function timeOf(fields, withEnded) {
  const at = (number) => Number(fields[number - 3]);
  return (at(14) + at(15) + (withEnded ? at(16) + at(17) : 0)) * tickMs;
}

/**
 * @param {number} pid
 * @returns {Promise<number | null>} milliseconds so far in user and system mode; null where it cannot be known
 */
export async function processTime(pid) {
  const fields = await fieldsOf(pid);
  return fields === null ? null : timeOf(fields, false);
}

/**
 * Of a process and all its children, those that have ended included: for PostgreSQL, whose every connection is a child.
 * @param {number} pid
 * @returns {Promise<number | null>}
 */
export async function familyTime(pid) {
  const own = await fieldsOf(pid);
  if (own === null) return null;
  let sum = timeOf(own, true);
  for (const name of await readdir('/proc')) {
    const fields = /^\d+$/.test(name) ? await fieldsOf(name) : null;
    if (fields !== null && Number(fields[1]) === pid) sum += timeOf(fields, false);
  }
  return sum;
}
