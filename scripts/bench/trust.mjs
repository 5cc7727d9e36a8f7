// The built server as a club runs it, in a process of its own, with people who practise at once; its memory over the time, and what
// signing in costs beside the bare hash.
import { spawn } from 'node:child_process';
import { mkdtemp, readFile, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { projectFolder } from '../processes.mjs';
import { StepError, step } from '../steps.mjs';
import { startChild } from './child.mjs';
import { familyTime, processTime } from './processor-time.mjs';

const people = 200;
/** From one question to the handing in of it, and no more of a person's time between: what they read of the outcome is part of it. */
const pause = { leastSeconds: 5, mostSeconds: 10 };
/** The first look at the memory: by then everything has been used once. */
const settledSeconds = 20;
const signIns = 30;

function startServer(url, dataFolder) {
  const child = spawn(process.execPath, [join(projectFolder, 'dist', 'src', 'web', 'main.js')], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, PORT: '0', HOST: '127.0.0.1', DATABASE_URL: url, RUNGWISE_DATA: dataFolder, RUNGWISE_TRUST_PROXY: '127.0.0.1' },
  });
  let said = '';
  const ready = new Promise((resolve, reject) => {
    child.once('exit', (code) => reject(new Error(`The server ended with ${code}: ${said}`)));
    child.stdout.setEncoding('utf8').on('data', (text) => {
      said += text;
      const address = /^ready (http:\/\/\S+)\/$/m.exec(said)?.[1];
      const setUp = /\/set-up\/\S+/.exec(said)?.[0];
      if (address !== undefined) resolve({ address, setUp, pid: child.pid });
    });
  });
  const end = () =>
    new Promise((resolve) => {
      if (child.exitCode !== null) return resolve();
      child.once('exit', resolve);
      child.kill('SIGTERM');
    });
  return { ready, end };
}

/** Megabytes of a process that are its own (PSS: what several share counts in parts); null where the system does not tell. */
async function memoryOf(pid) {
  const text = await readFile(`/proc/${pid}/smaps_rollup`, 'utf8').catch(() => '');
  const kilobytes = /^Pss:\s+(\d+) kB/m.exec(text)?.[1];
  return kilobytes === undefined ? null : Number(kilobytes) / 1024;
}

async function familyMemory(pid) {
  const own = await memoryOf(pid);
  if (own === null) return null;
  let sum = own;
  for (const name of (await readdir('/proc')).filter((one) => /^\d+$/.test(one))) {
    const text = await readFile(`/proc/${name}/stat`, 'utf8').catch(() => '');
    if (Number(text.slice(text.lastIndexOf(')') + 2).split(' ')[1]) === pid) sum += (await memoryOf(name)) ?? 0;
  }
  return sum;
}

async function practice(load, { pid, postmaster }, seconds) {
  const times = () => Promise.all([processTime(pid), familyTime(postmaster)]);
  const memory = async () => ({ node: await memoryOf(pid), postgres: await familyMemory(postmaster) });
  const before = await times();
  const running = load.ask('run', { seconds, ...pause });
  const early = Math.min(settledSeconds, seconds / 2);
  await Promise.race([wait(early * 1000), running]);
  const settled = await memory();
  // A little before the end, while everybody is still there.
  await Promise.race([wait((seconds - early - 1) * 1000), running]);
  const last = await memory();
  const found = await running;
  const after = await times();
  const each = after.map((value, index) => (value === null || before[index] === null ? null : (value - before[index]) / found.requests));
  return { ...found, people, seconds, pause, nodeMs: each[0], postgresMs: each[1], settledSeconds: early, settled, last };
}

/**
 * @param {{ url: string, postmaster: number }} place an empty database
 * @param {number} seconds how long everybody practises
 */
export async function trustFigures({ url, postmaster }, seconds, print) {
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-bench-data-'));
  const server = startServer(url, folder);
  const load = startChild(new URL('./practice.mjs', import.meta.url));
  try {
    const { address, setUp, pid } = await server.ready;
    await step('come in', async () => `${await load.ask('begin', { address, count: people })} people`, print);
    let found;
    await step('practise', async () => void (found = await practice(load, { pid, postmaster }, seconds)), print);
    if (found.recorded === 0) throw new StepError('Nobody answered anything.', `Look at ${found.faults.join('; ') || 'the pages'}.`);
    let signing;
    await step(
      'sign in',
      async () => {
        const bare = await load.ask('bareHash', { count: signIns });
        signing = { ...(await load.ask('signIn', { pid, setUp, count: signIns })), bare };
      },
      print,
    );
    return { ...found, signing };
  } finally {
    await load.end();
    await server.end();
    await rm(folder, { recursive: true, force: true });
  }
}

const text = (value, digits = 0) => (value === null ? '-' : value.toFixed(digits));

/** @param {Awaited<ReturnType<typeof trustFigures>>} found */
export function trustLines(found) {
  const { answer, page, settled, last, signing } = found;
  const grown = last.node === null ? '-' : `${last.node >= settled.node ? '+' : ''}${(last.node - settled.node).toFixed(0)}`;
  const ratio = (one) => (one === null || signing.bare === null ? '-' : (one / signing.bare).toFixed(2));
  return [
    `${found.people} people practise for ${found.seconds} s, each hands in ${found.pause.leastSeconds} to ${found.pause.mostSeconds} s after a question came`,
    `${found.recorded} answers recorded, ${(found.requests / found.seconds).toFixed(0)} requests a second, ${found.errors} errors${found.faults.length > 0 ? ` (${found.faults.join('; ')})` : ''}`,
    `handing in: p50 ${text(answer.p50, 1)} ms, p99 ${text(answer.p99, 1)} ms, most ${text(answer.most)} ms; pages: p50 ${text(page.p50, 1)} ms, p99 ${text(page.p99, 1)} ms, most ${text(page.most)} ms`,
    `processor time of each request: Node ${text(found.nodeMs, 2)} ms, PostgreSQL ${text(found.postgresMs, 2)} ms`,
    `memory of the server after ${found.settledSeconds} s: ${text(settled.node)} MB, at the end ${text(last.node)} MB (${grown}); of PostgreSQL ${text(settled.postgres)} MB, then ${text(last.postgres)} MB`,
    `signing in: staff ${text(signing.staff, 1)} ms of the server's processor time, ${ratio(signing.staff)} times the bare hash; return by phrase ${text(signing.phrase, 1)} ms, ${ratio(signing.phrase)} times; the bare hash ${text(signing.bare, 1)} ms`,
  ].join('\n');
}
