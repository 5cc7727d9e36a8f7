// npm run bench: how much of a bare route's speed the answer path, the question page, the home page and a calculator keep, what saving
// a choice on a paper costs while 200 sit at once, how many draws and readings of typed answers one core does, and what a tutor's pages
// cost for a class and for ten thousand, on this machine, now.
// Requests per second say more of the machine than of the program; the ratios and the times per request are what to compare.
// Options: --json (figures for a program), --rounds=3, --seconds=5 (of each target in each round; 10 for papers), --profile=FOLDER,
// --only=classes (the tutor's pages alone), --only=trust (200 people who practise at once for two minutes, and what signing in costs).
import { chmod, mkdtemp, readFile, rm } from 'node:fs/promises';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { startChild } from './bench/child.mjs';
import { familyTime, processTime } from './bench/processor-time.mjs';
import { classLines, summary, table } from './bench/report.mjs';
import { trustFigures, trustLines } from './bench/trust.mjs';
import { setUp } from './set-up.mjs';
import { StepError, runScript, step } from './steps.mjs';

const candidates = 50;
/** Rounds of twelve questions for each candidate. */
const roundsEach = 160;
const warmUpSeconds = 2;
/** Who sits a paper at once, and how often each of them saves a choice. */
const sitting = 200;
const everySeconds = 2;
const parts = {
  prepare: new URL('./bench/prepare.mjs', import.meta.url),
  real: new URL('./bench/real.mjs', import.meta.url),
  bare: new URL('./bench/bare.mjs', import.meta.url),
  load: new URL('./bench/load.mjs', import.meta.url),
  maths: new URL('./bench/maths.mjs', import.meta.url),
  classes: new URL('./bench/classes.mjs', import.meta.url),
};

function options() {
  const { values } = parseArgs({
    options: {
      json: { type: 'boolean', default: false },
      rounds: { type: 'string', default: '3' },
      seconds: { type: 'string' },
      profile: { type: 'string' },
      only: { type: 'string' },
    },
  });
  const [rounds, seconds] = [Number(values.rounds), Number(values.seconds ?? 5)];
  if (!(Number.isInteger(rounds) && rounds > 0 && Number.isInteger(seconds) && seconds > 0))
    throw new StepError('--rounds and --seconds take whole numbers from 1.', 'Leave them out for 3 rounds of 5 seconds.');
  if (values.only !== undefined && !['classes', 'trust'].includes(values.only))
    throw new StepError(`--only takes "classes" or "trust", not "${values.only}".`, 'Leave it out for everything.');
  // Each candidate is to save several times.
  return {
    ...values,
    rounds,
    seconds,
    paperSeconds: values.seconds === undefined ? 10 : seconds,
    trustSeconds: values.seconds === undefined ? 120 : seconds,
  };
}

/** One target for some seconds: what came, and what each answer cost in processor time of server and database. */
async function measure({ load, servers, postmaster }, { what, server, expected, pace }, seconds) {
  const { pid, address } = servers[server];
  const times = () => Promise.all([processTime(pid), familyTime(postmaster)]);
  const before = await times();
  const result = await load.ask(pace === undefined ? 'run' : 'pace', { what, server, address, seconds, expected, ...pace });
  const after = await times();
  if (result.others > 0 || result.good === 0)
    throw new StepError(
      `${what}: ${result.others} wrong answers (${JSON.stringify(result.statuses)}).`,
      'Mend the route; figures would mean nothing.',
    );
  const each = after.map((value, index) => (value === null || before[index] === null ? null : (value - before[index]) / result.good));
  return { ...result, nodeMs: each[0], postgresMs: each[1] };
}

const targets = [
  { what: 'real answer', server: 'real', expected: 303 },
  { what: 'bare answer', server: 'bare', expected: 303 },
  { what: 'real page', server: 'real', expected: 200 },
  { what: 'bare page', server: 'bare', expected: 200 },
  { what: 'real home', server: 'real', expected: 200 },
  { what: 'bare home', server: 'bare', expected: 200 },
  { what: 'real calculator', server: 'real', expected: 200 },
  { what: 'bare calculator', server: 'bare', expected: 200 },
];

/** Every second round the bare one goes first, so that neither always finds the database as the other left it. */
const orderOf = (round) => (round % 2 === 0 ? [0, 1, 2, 3, 4, 5, 6, 7] : [1, 0, 3, 2, 5, 4, 7, 6]).map((index) => targets[index]);

const saves = [
  { what: 'real save', server: 'real', expected: 200 },
  { what: 'bare save', server: 'bare', expected: 200 },
];

/**
 * Before all else, while the database has nothing to tidy up: at this pace its housekeeping would be most of what is read.
 * Each server is warmed up at four times the pace, and each run has a first turn of every candidate that opens the connections. The very
 * first turn meets a server that knows no paper yet, as after a start in the middle of an exam.
 */
async function paperRounds(bench, { rounds: count, paperSeconds }, print) {
  const all = [];
  await step(
    'papers',
    async () => {
      const at = (target, every, anew) => ({ ...target, pace: { everySeconds: every, anew } });
      const first = await measure(bench, at(saves[0], everySeconds, true), everySeconds);
      await measure(bench, at(saves[1], everySeconds, true), everySeconds);
      for (const target of saves) await measure(bench, at(target, everySeconds / 4, true), warmUpSeconds);
      for (let round = 0; round < count; round += 1) {
        const found = {};
        for (const target of round % 2 === 0 ? saves : [...saves].reverse()) {
          await measure(bench, at(target, everySeconds, true), everySeconds);
          found[target.what] = await measure(bench, at(target, everySeconds, false), paperSeconds);
        }
        all.push(Object.fromEntries(saves.map(({ what }) => [what, found[what]])));
      }
      return `${sitting} candidates, a choice every ${everySeconds} seconds; first choices after the start: p99 ${first.p99.toFixed(0)} ms`;
    },
    print,
  );
  return all;
}

async function rounds(bench, { rounds: count, seconds }, print) {
  await step(
    'warm-up',
    async () => {
      for (const target of targets) await measure(bench, target, warmUpSeconds);
    },
    print,
  );
  const all = [];
  for (let round = 0; round < count; round += 1) {
    await step(
      `round ${round + 1} of ${count}`,
      async () => {
        const found = {};
        for (const target of orderOf(round)) found[target.what] = await measure(bench, target, seconds);
        all.push(Object.fromEntries(targets.map(({ what }) => [what, found[what]])));
        if (found['real answer'].usedUp) return 'all prepared questions were answered before the time was over';
      },
      print,
    );
  }
  return all;
}

async function withServers({ url, postmaster, work }, chosen, use) {
  const execArgv = chosen.profile === undefined ? [] : ['--cpu-prof', `--cpu-prof-dir=${chosen.profile}`];
  const children = { real: startChild(parts.real, execArgv), bare: startChild(parts.bare, execArgv), load: startChild(parts.load) };
  try {
    await children.load.ask('read', { work });
    const servers = {};
    for (const name of ['real', 'bare'])
      servers[name] = { pid: children[name].pid, address: await children[name].ask('serve', { url, work }) };
    return await use({ load: children.load, servers, postmaster });
  } finally {
    await Promise.all(Object.values(children).map((child) => child.end()));
  }
}

async function withDatabase(use) {
  const { startEmbeddedPostgres } = await import('../dist/src/platform/embedded-postgres/index.js');
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-bench-'));
  await chmod(folder, 0o711); // the database's own user passes through
  try {
    const database = await startEmbeddedPostgres({ dataFolder: join(folder, 'data'), log: console.error });
    try {
      const file = await readFile(join(folder, 'data', 'postgres', 'cluster', 'postmaster.pid'), 'utf8');
      return await use({ url: database.url, postmaster: Number(file.split('\n')[0]), work: join(folder, 'work.json') });
    } finally {
      await database.stop();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** In a database of its own: ten thousand candidates would weigh on every other figure. */
const classFigures = (print) =>
  withDatabase(async ({ url }) => {
    const child = startChild(parts.classes);
    let found;
    await step(
      'classes',
      async () => {
        found = await child.ask('measure', { url }).finally(child.end);
        return `${found.everybody.at(-1).size} candidates with ${found.questionsEach} questions each`;
      },
      print,
    );
    return found;
  });

await runScript(async () => {
  const chosen = options();
  const print = chosen.json ? console.error : console.log;
  await setUp({ dev: true, print });
  if (chosen.only === 'classes') {
    const found = await classFigures(print);
    return console.log(chosen.json ? JSON.stringify(found, null, 2) : classLines(found));
  }
  if (chosen.only === 'trust') {
    const found = await withDatabase((place) => trustFigures(place, chosen.trustSeconds, print));
    return console.log(chosen.json ? JSON.stringify(found, null, 2) : trustLines(found));
  }
  const all = await withDatabase(async (place) => {
    await step(
      'candidates',
      async () => {
        const child = startChild(parts.prepare);
        const items = await child.ask('fill', { ...place, candidates, rounds: roundsEach, sitting }).finally(child.end);
        return `${candidates}, with ${items} questions to answer, and ${sitting} who sit a paper`;
      },
      print,
    );
    return withServers(place, chosen, async (bench) => {
      const papers = await paperRounds(bench, chosen, print);
      const found = await rounds(bench, chosen, print);
      return found.map((round, index) => ({ ...round, ...papers[index] }));
    });
  });
  const machine = `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} processors, Node ${process.versions.node}`;
  const child = startChild(parts.maths);
  const maths = await child.ask('measure', { seconds: chosen.seconds }).finally(child.end);
  const figures = { ...summary(all), maths, classes: await classFigures(print) };
  if (chosen.json) console.log(JSON.stringify({ machine, connections: candidates, sitting, everySeconds, ...figures }, null, 2));
  else {
    console.log(`\n${machine}; ${candidates} connections; server, database and load share the machine; medians of ${all.length} rounds\n`);
    console.log(table(figures));
    if (figures.targets.some(({ nodeMs }) => nodeMs === null))
      console.log('\nThis system has no /proc, so the processor times are left out.');
  }
});
