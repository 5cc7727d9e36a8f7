// Sends choices on papers at a fixed pace, as candidates do who sit at once: whether or not the last answer has come. A server that
// falls behind must not slow down what it is measured by, so a save's time runs from the moment at which it was due.
import { Agent, request } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';

const patienceMs = 10_000;
const questions = 26;

let sitters = [];
/** Connections stay open from one run to the next of the same server, as a browser keeps its own; one for each candidate. */
let agents = [];

/** @param {{ csrf: string, cookies: string, sittings: Record<string, string> }[]} people who sit; `sittings` by server */
export function seat(people) {
  sitters = people.map((one) => ({ ...one, turns: { real: 0, bare: 0 } }));
}

/** Question after question. When all have their choice, each is changed in turn. */
function choice(one, server) {
  const turn = one.turns[server];
  one.turns[server] += 1;
  const [position, lap] = [(turn % questions) + 1, Math.floor(turn / questions)];
  const letter = (round) => (round < 0 ? '' : 'AB'[round % 2]);
  return { position, now: letter(lap), was: letter(lap - 1) };
}

const pathOf = {
  real: (one) => `/papers/sittings/${one.sittings.real}/save`,
  bare: (one, { position }) => `/sheet/${one.personId}/${one.sittings.bare}/${position}`,
};

/** @returns {Promise<{ status: number, ms: number }>} status 0 when no answer came */
function save(number, server, address, due) {
  const one = sitters[number];
  const made = choice(one, server);
  const body = `_csrf=${encodeURIComponent(one.csrf)}&c${made.position}=${made.now}&w${made.position}=${made.was}`;
  const headers = {
    accept: 'application/json',
    'content-type': 'application/x-www-form-urlencoded;charset=UTF-8',
    'content-length': Buffer.byteLength(body),
    cookie: one.cookies,
    origin: address,
    'sec-fetch-site': 'same-origin',
  };
  return new Promise((resolve) => {
    const ended = (status) => resolve({ status, ms: performance.now() - due });
    const sent = request(`${address}${pathOf[server](one, made)}`, { method: 'POST', agent: agents[number], headers });
    sent.once('response', (answer) => {
      answer.resume();
      answer.once('end', () => ended(answer.statusCode));
      answer.once('error', () => ended(0));
    });
    sent.setTimeout(patienceMs, () => sent.destroy(new Error('No answer.')));
    sent.once('error', () => ended(0));
    sent.end(body);
  });
}

/** New connections; those of the run before would be closed by a server that has waited too long. */
function connect() {
  for (const agent of agents) agent.destroy();
  agents = sitters.map(() => new Agent({ keepAlive: true, maxSockets: 1 }));
}

const rank = (sorted, share) => sorted[Math.max(0, Math.ceil(sorted.length * share) - 1)];

/**
 * @param {{ address: string, server: string, seconds: number, expected: number, everySeconds: number, anew: boolean }} round
 *   everySeconds: from one choice of a candidate to the next; anew: with connections that are not open yet
 */
export async function pace({ address, server, seconds, expected, everySeconds, anew }) {
  if (anew) connect();
  const between = (everySeconds * 1000) / sitters.length;
  const count = Math.round((seconds * 1000) / between);
  const begun = performance.now();
  const saves = [];
  for (let index = 0; index < count; index += 1) {
    const due = begun + index * between;
    const early = due - performance.now();
    if (early > 0) await wait(early);
    saves.push(save(index % sitters.length, server, address, due));
  }
  const results = await Promise.all(saves);
  // The last one's turn is as long as the others'.
  const took = Math.max(performance.now() - begun, count * between) / 1000;
  const statuses = {};
  for (const { status } of results) statuses[status] = (statuses[status] ?? 0) + 1;
  const good = statuses[expected] ?? 0;
  const sorted = results.map(({ ms }) => ms).sort((a, b) => a - b);
  const [p50, p99] = [rank(sorted, 0.5), rank(sorted, 0.99)];
  return { good, others: count - good, statuses, perSecond: good / took, p50, p99, bytes: null, usedUp: false };
}
