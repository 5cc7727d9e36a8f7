// Candidates who sit a paper at once: each with two begun papers of the shipped blueprint, one for the real route and one for the bare
// one, so that both find answer sheets that are equally full.
import { randomUUID } from 'node:crypto';
import { comeIn, lookAt } from './visitors.mjs';

const paper = 'entry-safety/safety-26';
const atOnce = 8;

async function post(server, cookies, url, fields) {
  const headers = { cookie: cookies, 'content-type': 'application/x-www-form-urlencoded' };
  const answer = await server.inject({ method: 'POST', url, headers, payload: new URLSearchParams(fields).toString() });
  if (answer.statusCode !== 303) throw new Error(`${url} answered ${answer.statusCode}.`);
}

async function sitter({ accounts, server }, number) {
  const cookie = await comeIn(accounts, `Sitter ${number}`, `203.0.113.${number}`);
  const person = await accounts.whoHolds(cookie);
  const { cookies, csrf } = await lookAt(server, cookie, '/papers');
  const sittings = { real: randomUUID(), bare: randomUUID() };
  for (const sitting of Object.values(sittings)) {
    await post(server, cookies, '/papers', { _csrf: csrf, sitting, paper, extra: '0' });
    await post(server, cookies, `/papers/sittings/${sitting}/begin`, { _csrf: csrf, pages: 'one' });
  }
  return { personId: person.id, cookies, csrf, sittings };
}

/** @returns {Promise<object[]>} the candidates, as the load needs them */
export async function sittersOf(services, db, count) {
  const sitters = [];
  // A few at a time: most of coming in is waiting for a slow hash.
  for (let from = 1; from <= count; from += atOnce) {
    const numbers = Array.from({ length: Math.min(atOnce, count - from + 1) }, (_, index) => from + index);
    sitters.push(...(await Promise.all(numbers.map((number) => sitter(services, number)))));
  }
  // However long somebody lets the benchmark run, no clock runs out in it.
  await db.pool.query(`UPDATE sitting SET deadline_at = deadline_at + interval '1 day'`);
  return sitters;
}
