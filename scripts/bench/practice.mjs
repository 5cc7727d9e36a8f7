// A club on one machine: people who practise at once, each at a person's pace, and what signing in costs. In a process of its own.
import { hash, verify } from '@node-rs/argon2';
import { setTimeout as wait } from 'node:timers/promises';
import { Browser, comeIn, someAnswer } from './browsers.mjs';
import { answerTasks } from './child.mjs';
import { processTime } from './processor-time.mjs';

const atOnce = 8;
const roundMinutes = '20';

let server = '';
let times = [];
let people = [];

const rank = (sorted, share) => sorted[Math.max(0, Math.ceil(sorted.length * share) - 1)] ?? null;

/** Numbers from 0 to 1 that are the same in every run. */
function mixed(seed) {
  let state = seed * 2_654_435_761 + 1;
  return () => {
    state = (Math.imul(state ^ (state >>> 15), 2_246_822_519) + 0x9e3779b9) >>> 0;
    return state / 2 ** 32;
  };
}

/** Everybody comes in and stands before a first question. */
async function begin({ address, count }) {
  server = address;
  people = [];
  for (let from = 0; from < count; from += atOnce) {
    const numbers = Array.from({ length: Math.min(atOnce, count - from) }, (_, index) => from + index);
    people.push(
      ...(await Promise.all(
        numbers.map(async (number) => {
          const browser = new Browser({ server, address: `198.18.${number >> 8}.${number & 255}`, seen: (...one) => times.push(one) });
          const phrase = await comeIn(browser, `Candidate ${number + 1}`);
          return { number, browser, phrase, chance: mixed(number + 1), page: await newRound(browser) };
        }),
      )),
    );
  }
  return people.length;
}

async function newRound(browser) {
  const sent = await browser.post(await browser.get('/'), '/study/rounds', { minutes: roundMinutes });
  return await browser.get(sent.location ?? '/');
}

/** One question after another until the time is over; a new round when one has ended. */
async function practise(one, until, pause) {
  const { browser, chance } = one;
  let { number: turn, page } = one;
  let recorded = 0;
  await wait(chance() * pause.least);
  while (performance.now() < until) {
    if (!page.html.querySelector('form[action="/study/answer"]')) page = await newRound(browser);
    await wait(Math.max(0, Math.min(pause.least + chance() * (pause.most - pause.least), until - performance.now())));
    if (performance.now() >= until) break;
    turn += 1;
    const sent = await browser.post(page, '/study/answer', someAnswer(page, turn), 'answer');
    page = await browser.get(sent.location ?? '/');
    const onward = page.html.querySelector('a.btn.go')?.getAttribute('href');
    if (sent.location?.startsWith('/study/answers/')) {
      recorded += 1;
      page = await browser.get(onward ?? '/');
    }
  }
  return recorded;
}

const summary = (named) => {
  const ms = named.map(([, one]) => one).sort((a, b) => a - b);
  return { count: ms.length, p50: rank(ms, 0.5), p99: rank(ms, 0.99), most: ms.at(-1) ?? null };
};

/** @returns what came, how quickly in milliseconds, and how many answers the server says it recorded */
async function run({ seconds, leastSeconds, mostSeconds }) {
  times = [];
  const until = performance.now() + seconds * 1000;
  const pause = { least: leastSeconds * 1000, most: mostSeconds * 1000 };
  const faults = [];
  const each = await Promise.all(
    people.map((one) =>
      practise(one, until, pause).catch((error) => {
        faults.push(error.message);
        return 0;
      }),
    ),
  );
  const of = (name) => summary(times.filter(([what]) => what === name));
  const wrong = times.filter(([, , status]) => status !== 200 && status !== 303);
  return {
    requests: times.length,
    recorded: each.reduce((sum, one) => sum + one, 0),
    errors: wrong.length + faults.length,
    faults: [...new Set([...faults, ...wrong.map(([what, , status]) => `${what}: ${status}`)])].slice(0, 5),
    answer: of('answer'),
    page: of('page'),
  };
}

/** Processor milliseconds of the server for each of `count` forms, whose pages were looked at beforehand. */
async function costOf(pid, count, path, fields) {
  const all = [];
  for (let number = 0; number < count; number += 1) {
    const browser = new Browser({ server, address: `198.19.0.${number}` });
    all.push({ browser, page: await browser.get(path) });
  }
  const before = await processTime(pid);
  for (const [number, { browser, page }] of all.entries()) {
    const { status } = await browser.post(page, path, fields(number));
    if (status !== 303) throw new Error(`${path} answered ${status}.`);
  }
  return before === null ? null : ((await processTime(pid)) - before) / count;
}

async function signIn({ pid, setUp, count }) {
  const password = 'seven odd herons over Wobbling';
  const browser = new Browser({ server, address: '198.19.1.1' });
  const page = await browser.get(setUp);
  const made = await browser.post(page, setUp, { name: 'Bench', password, again: password });
  if (made.status !== 303) throw new Error(`The first administrator could not be made: ${made.status}.`);
  const staff = await costOf(pid, count, '/sign-in', () => ({ name: 'Bench', password }));
  const phrase = await costOf(pid, count, '/return', (number) => ({ phrase: people[number % people.length].phrase }));
  return { staff, phrase };
}

/** The hash alone, with the settings that the server uses (src/platform/password.ts), in this process. */
async function bareHash({ count }) {
  const settings = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 };
  const stored = await hash('a password', settings);
  const before = await processTime(process.pid);
  for (let turn = 0; turn < count; turn += 1) await verify(stored, 'a password');
  return before === null ? null : ((await processTime(process.pid)) - before) / count;
}

answerTasks({ begin, run, signIn, bareHash });
