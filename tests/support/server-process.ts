import { spawn } from 'node:child_process';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { parse } from 'node-html-parser';
import { projectFolder } from '../../src/platform/project-folder.js';
import { Visitor, type Shown } from './app.js';
import { tokenOf } from './answering.js';
import { ask } from './embedded.js';

/** The built server as a process of its own, and people who come to it over the network. */

export interface ServerProcess {
  /** Without a slash at the end. */
  address: string;
  /** False once the process has ended, for whatever reason. */
  running(): boolean;
  /** Everything it has printed. */
  said(): string;
  /** Sends the signal and waits for the end. @returns the exit code, null when the signal itself ended it */
  end(signal: NodeJS.Signals): Promise<number | null>;
}

/** A port that nobody listens on, so that a server can come back where it was. */
export async function freePort(): Promise<number> {
  const probe = createServer();
  await new Promise<void>((resolve) => probe.listen({ port: 0, host: '127.0.0.1' }, resolve));
  const { port } = probe.address() as AddressInfo;
  await new Promise((resolve) => probe.close(resolve));
  return port;
}

/** Runs the compiled program and waits until it says that it is ready. It needs `npm run build`. */
export async function startServer(env: { PORT?: string; RUNGWISE_DATA?: string; DATABASE_URL?: string }): Promise<ServerProcess> {
  const child = spawn(process.execPath, [join(projectFolder, 'dist', 'src', 'web', 'main.js')], {
    cwd: projectFolder,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, PORT: '0', DATABASE_URL: '', RUNGWISE_ORIGIN: '', ...env },
  });
  let said = '';
  let running = true;
  const ended = new Promise<number | null>((resolve) => child.once('exit', (code) => resolve(code)));
  const tooLong = setTimeout(() => child.kill('SIGKILL'), 90_000);
  void ended.then(() => (running = false));
  const address = await new Promise<string>((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (text: string) => {
        said += text;
        const found = /^ready (http:\/\/\S+)\/$/m.exec(said)?.[1];
        if (found !== undefined) resolve(found);
      });
    }
    void ended.then((code) => reject(new Error(`The server ended with ${code}: ${said}`)));
  });
  clearTimeout(tooLong);
  const end = (signal: NodeJS.Signals): Promise<number | null> => {
    child.kill(signal);
    return ended;
  };
  return { address, running: () => running, said: () => said, end };
}

/** A visitor who comes over HTTP. A request that gets no answer throws, after ten seconds at the latest. */
export class HttpVisitor extends Visitor {
  constructor(public base: string) {
    super(undefined as never); // what a visitor does is sent by `send` alone, and that needs no application here
  }

  override async send(method: 'GET' | 'POST', url: string, body?: Record<string, string>): Promise<Shown> {
    const response = await fetch(this.base + url, {
      method,
      redirect: 'manual',
      signal: AbortSignal.timeout(10_000),
      headers: { cookie: [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ') },
      ...(body === undefined ? {} : { body: new URLSearchParams(body) }),
    });
    const text = await response.text();
    for (const line of response.headers.getSetCookie()) this.keep(line);
    const html = parse(text);
    return {
      status: response.status,
      location: response.headers.get('location') ?? undefined,
      headers: Object.fromEntries(response.headers),
      html,
      text,
      words: (html.querySelector('main') ?? html).text.replace(/\s+/g, ' '),
    };
  }

  private keep(line: string): void {
    const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
    if (value === '' || /;\s*max-age=0/i.test(line)) this.cookies.delete(name);
    else this.cookies.set(name, value);
  }
}

/** What a person might send for any question: whatever stands first, or a number; right or not. */
export function anyFields(page: Shown): Record<string, string> {
  const option = page.html.querySelector('input[name=option]')?.getAttribute('value');
  const judged = page.html.querySelectorAll('[role=radiogroup] input[value=t]').map((input) => [input.getAttribute('name') ?? '', 't']);
  const placed = page.html.querySelectorAll('select').map((select, index) => {
    const steps = select.closest('[data-steps]') !== null;
    return [select.getAttribute('name') ?? '', steps ? String(index + 1) : '0'];
  });
  const parts = Object.fromEntries([...judged, ...placed]) as Record<string, string>;
  return { ...parts, ...(option === undefined ? { value: '12' } : { option }), certainty: 'fairly' };
}

/** What is recorded under these tokens: how often each, and whether its memory counted as many answers as there are. */
export function recordedOf(url: string, tokens: string[]): Promise<{ token: string; times: number; counted: boolean }[]> {
  return ask(
    url,
    `SELECT a.token, count(*)::int AS times, bool_and(m.reps = (SELECT count(*) FROM answer o
         WHERE o.person_id = m.person_id AND o.question_id = m.question_id)) AS counted
     FROM answer a JOIN memory m ON m.person_id = a.person_id AND m.question_id = a.question_id
     WHERE a.token = ANY ($1::uuid[]) GROUP BY a.token ORDER BY a.token`,
    [tokens],
  );
}

/** What `recordedOf` says when all is well. */
export const onceEach = (tokens: string[]) => [...tokens].sort().map((token) => ({ token, times: 1, counted: true }));

/**
 * Candidates who do not give up: they come in, start rounds and answer, and what fails because the server or its database
 * is away they send again, unchanged, until it is taken.
 */
export class Persistent {
  /** What the server said it has (303): each answer's token, with what was given. */
  readonly acknowledged = new Map<string, string>();
  /** How often each failure was met: `no answer` or a status. */
  readonly failures = new Map<string, number>();
  /** How many answers had to be sent more than once. */
  sentAgain = 0;

  constructor(
    private readonly base: string,
    private readonly wanted: number,
  ) {}

  private handedOut = 0;

  /** One candidate after another, as each runs out of questions, until all wanted answers are given. */
  async work(): Promise<void> {
    while (this.handedOut < this.wanted) {
      const visitor = new HttpVisitor(this.base);
      const welcome = await this.insist(() => visitor.get('/'));
      await this.insist(() => visitor.submit(welcome, '/start', { name: 'Odo', timeZone: 'Europe/London' }));
      // When the answer to a start was lost on the way, the same person cannot be had again: somebody else comes.
      if (visitor.cookies.has('rungwise')) while (this.handedOut < this.wanted && (await this.round(visitor)));
    }
  }

  /** @returns false when the candidate has nothing more to do today */
  private async round(visitor: HttpVisitor): Promise<boolean> {
    const now = await this.insist(() => visitor.get('/'));
    if (now.html.querySelector('form[action="/study/rounds"]') === null) return false;
    const sent = await this.insist(() => visitor.submit(now, '/study/rounds', { minutes: '20' }));
    if (sent.location === undefined) throw new Error(`no round: ${sent.status} ${sent.words}`);
    for (let asked = 0; ; asked += 1) {
      const page = await this.insist(() => visitor.get(sent.location as string));
      if (page.status === 303) return asked > 0;
      if (this.handedOut >= this.wanted) return false;
      this.handedOut += 1;
      await this.answer(visitor, page);
    }
  }

  private async answer(visitor: HttpVisitor, page: Shown): Promise<void> {
    const token = tokenOf(page);
    const fields = anyFields(page);
    let sent = 0;
    const { status, words } = await this.insist(() => {
      sent += 1;
      return visitor.submit(page, '/study/answer', fields);
    });
    if (status !== 303) throw new Error(`The answer was not taken: ${status} ${words}`);
    if (sent > 1) this.sentAgain += 1;
    const inParts = Object.keys(fields).some((name) => name.startsWith('part-'));
    this.acknowledged.set(token, inParts ? '' : (fields['option'] ?? fields['value'] ?? ''));
  }

  private async insist(send: () => Promise<Shown>): Promise<Shown> {
    for (const until = Date.now() + 60_000; ; await wait(40)) {
      const shown = await send().catch((error: unknown) => error as Error);
      if (!(shown instanceof Error) && shown.status < 500) return shown;
      if (shown instanceof Error && !/^(fetch failed|terminated)$/.test(shown.message)) throw shown;
      const failure = shown instanceof Error ? 'no answer' : String(shown.status);
      this.failures.set(failure, (this.failures.get(failure) ?? 0) + 1);
      if (Date.now() > until) throw new Error(`The server did not come back within a minute: ${failure}`);
    }
  }
}
