// People at their browsers, without scripts: they keep cookies, read forms off pages and send them from addresses of their own, as behind
// a proxy. What every request took is written down.
import { parse } from 'node-html-parser';

const patienceMs = 10_000;

export class Browser {
  #cookies = new Map();

  /** @param {{ server: string, address: string, seen?: (what: string, ms: number, status: number) => void }} given */
  constructor({ server, address, seen = () => undefined }) {
    Object.assign(this, { server, address, seen });
  }

  /** @param {string} what under which name the time is written down */
  async #ask(what, path, form) {
    const headers = { cookie: [...this.#cookies].map(([name, value]) => `${name}=${value}`).join('; '), 'x-forwarded-for': this.address };
    const sent = form === undefined ? { headers } : { headers, method: 'POST', body: new URLSearchParams(form) };
    const begun = performance.now();
    let status = 0;
    try {
      const answer = await fetch(this.server + path, { ...sent, redirect: 'manual', signal: AbortSignal.timeout(patienceMs) });
      const text = await answer.text();
      status = answer.status;
      for (const cookie of answer.headers.getSetCookie()) {
        const [pair] = cookie.split(';');
        this.#cookies.set(pair.slice(0, pair.indexOf('=')), pair.slice(pair.indexOf('=') + 1));
      }
      return { status, location: answer.headers.get('location'), html: parse(text) };
    } catch {
      return { status: 0, location: null, html: parse('') };
    } finally {
      this.seen(what, performance.now() - begun, status);
    }
  }

  /** Looks at a page, and at those it leads on to. */
  async get(path, what = 'page') {
    const page = await this.#ask(what, path);
    return page.location === null ? page : await this.get(page.location, what);
  }

  /** Sends the form that goes to `action`, with what its hidden fields hold. @returns the answer, not followed */
  async post(page, action, fields, what = 'form') {
    const form = page.html.querySelectorAll('form').find((one) => one.getAttribute('action') === action);
    if (form === undefined) throw new Error(`There is no form for ${action}: ${page.status} ${page.html.querySelector('h1')?.text ?? ''}`);
    const hidden = form.querySelectorAll('input[type=hidden]').map((one) => [one.getAttribute('name'), one.getAttribute('value') ?? '']);
    return await this.#ask(what, action, { ...Object.fromEntries(hidden), ...fields });
  }
}

/** Somebody who was never here comes in. @returns the return phrase */
export async function comeIn(browser, name) {
  const welcome = await browser.get('/');
  const sent = await browser.post(welcome, '/start', { name, region: 'uk', timeZone: 'Europe/London' });
  if (sent.status !== 303) throw new Error(`Coming in was answered by ${sent.status}.`);
  const words = (await browser.get(sent.location)).html.querySelectorAll('.slip li').map((one) => one.text.trim());
  if (words.length !== 7) throw new Error('The page with the return phrase has not seven words.');
  return words.join(' ');
}

/**
 * Any answer to the question on the page that its kind can take: an option, a judgement of each statement, each step and each pair once,
 * and of a number that it is not known.
 * @param {number} turn mixes the answers, in the same way every time
 */
export function someAnswer({ html }, turn) {
  if (html.querySelector('input[name=value]') !== null) return { value: '', certainty: 'unknown' };
  const fields = { certainty: ['sure', 'fairly', 'guessing'][turn % 3] };
  const choices = new Map();
  for (const one of html.querySelectorAll('form[action="/study/answer"] input[type=radio]'))
    choices.set(one.getAttribute('name'), [...(choices.get(one.getAttribute('name')) ?? []), one.getAttribute('value')]);
  for (const [name, values] of choices) fields[name] = values[turn % values.length];
  html.querySelectorAll('form[action="/study/answer"] select').forEach((select, index) => {
    const values = select
      .querySelectorAll('option')
      .map((one) => one.getAttribute('value'))
      .filter((value) => value !== '');
    fields[select.getAttribute('name')] = values[(index + turn) % values.length];
  });
  return fields;
}
