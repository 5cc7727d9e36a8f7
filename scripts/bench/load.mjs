// Sends the requests: fifty connections, one candidate each, the next request as soon as the last is answered.
import autocannon from 'autocannon';
import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { answerTasks } from './child.mjs';
import { pace, seat } from './pace.mjs';

const formType = 'application/x-www-form-urlencoded';
const certainties = ['sure', 'fairly', 'guessing'];

/** Each candidate's place in the list of questions not answered yet; it goes on from round to round. */
let people = [];
/** Mixes options and certainties in the same way every time. */
let turn = 0;

function fields(csrf, token) {
  turn += 1;
  return `_csrf=${encodeURIComponent(csrf)}&token=${token}&option=${turn % 3}&certainty=${certainties[(turn >> 2) % 3]}`;
}

/** What one connection sends: a request without change, or one that is made anew each time. */
const senders = {
  'real answer': (one, stop) => ({
    method: 'POST',
    path: '/study/answer',
    headers: { 'content-type': formType, cookie: one.cookies },
    setupRequest: (request) => {
      const item = one.items[one.next];
      if (item === undefined) {
        stop();
        return request;
      }
      one.next += 1;
      return { ...request, body: fields(one.csrf, item[0]) };
    },
  }),
  'bare answer': (one) => ({
    method: 'POST',
    headers: { 'content-type': formType, cookie: one.cookies },
    setupRequest: (request) => {
      one.bareNext += 1;
      const [, question] = one.items[one.bareNext % one.items.length];
      return { ...request, path: `/answer/${one.person.id}/${question}`, body: fields(one.csrf, randomUUID()) };
    },
  }),
  'real page': (one) => ({ method: 'GET', path: `/study/rounds/${one.round}`, headers: { cookie: one.cookies } }),
  'real home': (one) => ({ method: 'GET', path: '/', headers: { cookie: one.cookies } }),
  'bare home': (one, _stop, number) => ({ method: 'GET', path: `/home/${number}`, headers: { cookie: one.cookies } }),
  'real calculator': () => ({ method: 'GET', path: '/calculators/fuse-from-power?power=1150&region=uk' }),
  'bare calculator': () => ({ method: 'GET', path: '/calculator/0' }),
  'bare page': (one, _stop, number) => ({ method: 'GET', path: `/page/${number}`, headers: { cookie: one.cookies } }),
};

/**
 * @param {{ what: string, address: string, seconds: number, expected: number }} round expected: the status every answer must have
 * @returns {Promise<object>} what came, how quickly (milliseconds), and what came that should not have
 */
async function run({ what, address, seconds, expected }) {
  let number = 0;
  let usedUp = false;
  const stop = () => {
    usedUp = true;
    setImmediate(() => instance.stop());
  };
  const instance = autocannon({
    url: address,
    connections: people.length,
    duration: seconds,
    setupClient: (client) => {
      client.setRequests([senders[what](people[number % people.length], stop, number % people.length)]);
      number += 1;
    },
  });
  const begun = performance.now();
  const result = await instance;
  const took = (performance.now() - begun) / 1000;
  const statuses = Object.fromEntries(Object.entries(result.statusCodeStats).map(([code, { count }]) => [code, count]));
  const good = statuses[expected] ?? 0;
  const others = Object.values(statuses).reduce((sum, count) => sum + count, 0) - good + result.errors + result.timeouts;
  const { p50, p99 } = result.latency;
  const bytes = Math.round(result.throughput.total / Math.max(1, good));
  return { good, others, statuses, perSecond: good / took, p50, p99, bytes, usedUp };
}

async function read({ work }) {
  const prepared = JSON.parse(await readFile(work, 'utf8'));
  people = prepared.people.map((one) => ({ ...one, next: 0, bareNext: 0 }));
  seat(prepared.sitters);
}

answerTasks({ read, run, pace });
