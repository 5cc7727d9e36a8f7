import { spawn } from 'node:child_process';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { parse } from 'node-html-parser';
import { projectFolder } from '../../src/platform/project-folder.js';
import { Visitor, type Shown } from './app.js';
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
export async function startServer(env: Record<string, string>): Promise<ServerProcess> {
  const child = spawn(process.execPath, [join(projectFolder, 'dist', 'src', 'web', 'main.js')], {
    cwd: projectFolder,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, PORT: '0', DATABASE_URL: '', RUNGWISE_ORIGIN: '', ...env },
  });
  let said = '';
  let running = true;
  const ended = new Promise<number | null>((resolve) => child.once('exit', (code) => resolve(code)));
  const tooLong = setTimeout(() => child.kill('SIGKILL'), 180_000);
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

/** A visitor who comes over HTTP. A request that gets no answer throws, at the latest when this visitor's patience is at its end. */
export class HttpVisitor extends Visitor {
  constructor(
    public base: string,
    /** What every request says besides, such as where it claims to come from. */
    private readonly always: Record<string, string> = {},
    /** Milliseconds. */
    private readonly patience = 10_000,
  ) {
    super(undefined as never); // what a visitor does is sent by `ask` alone, and that needs no application here
  }

  override send(method: 'GET' | 'POST', url: string, body?: Record<string, string>, headers: Record<string, string> = {}): Promise<Shown> {
    return this.ask(url, { method, headers, ...(body === undefined ? {} : { body: new URLSearchParams(body) }) });
  }

  override sendFile(page: Shown | null, action: string, name: string, bytes: Buffer): Promise<Shown> {
    const body = new FormData();
    const token = page?.html.querySelector(`form[action="${action}"] input[name=_csrf]`)?.getAttribute('value');
    if (token !== undefined) body.append('_csrf', token);
    body.append('file', new Blob([new Uint8Array(bytes)], { type: 'application/zip' }), name);
    return this.ask(action, { method: 'POST', headers: {}, body });
  }

  private async ask(
    url: string,
    { headers, ...request }: { method: string; headers: Record<string, string>; body?: URLSearchParams | FormData },
  ): Promise<Shown> {
    const response = await fetch(this.base + url, {
      ...request,
      redirect: 'manual',
      signal: AbortSignal.timeout(this.patience),
      headers: { ...this.always, ...headers, cookie: [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ') },
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
