import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { randomFrom } from '../../src/core/random.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { tokenOf } from './answering.js';
import type { Shown } from './app.js';
import { anyFields, HttpVisitor } from './server-process.js';
import { password } from './staff.js';

/**
 * People who do not give up: what fails because the server or its database is away they send again, unchanged, until it is taken. Each
 * keeps in mind what the server said it has.
 */
export class Insisting {
  /** How often each failure was met: `no answer` or a status. */
  readonly failures = new Map<string, number>();
  /** How many requests that change something had to be sent more than once. */
  sentAgain = 0;

  constructor(readonly base: string) {}

  /** A busy machine is waited for: only a broken connection or "try again" is a failure. */
  visitor(): HttpVisitor {
    return new HttpVisitor(this.base, {}, 60_000);
  }

  async insist(send: () => Promise<Shown>, changes = false): Promise<Shown> {
    let sent = 0;
    for (const until = Date.now() + 240_000; ; await wait(80)) {
      sent += 1;
      const shown = await send().catch((error: unknown) => error as Error);
      if (!(shown instanceof Error) && shown.status < 500) {
        if (changes && sent > 1) this.sentAgain += 1;
        return shown;
      }
      if (shown instanceof Error && !/^(fetch failed|terminated)$/.test(shown.message)) throw shown;
      const failure = shown instanceof Error ? 'no answer' : String(shown.status);
      this.failures.set(failure, (this.failures.get(failure) ?? 0) + 1);
      if (Date.now() > until) throw new Error(`The server did not come back in four minutes: ${failure}`);
    }
  }

  /** Somebody who has come in. When the answer to a start was lost on the way, the same person cannot be had again: somebody else comes. */
  async candidate(): Promise<HttpVisitor> {
    for (;;) {
      const visitor = this.visitor();
      const welcome = await this.insist(() => visitor.get('/'));
      await this.insist(() => visitor.submit(welcome, '/start', { name: 'Odo', timeZone: 'Europe/London' }), true);
      if (visitor.cookies.has('rungwise')) return visitor;
    }
  }
}

/** Candidates who start rounds and answer. */
export class Answering {
  /** What the server said it has (303): each answer's token, with what was given. */
  readonly acknowledged = new Map<string, string>();
  private begun = 0;

  constructor(
    private readonly people: Insisting,
    /** Asked before each answer, with how many were begun. */
    private readonly enough: (begun: number) => boolean,
  ) {}

  /** One candidate after another, as each runs out of questions, until it is enough. */
  async work(): Promise<void> {
    while (!this.enough(this.begun)) {
      const visitor = await this.people.candidate();
      while (!this.enough(this.begun) && (await this.round(visitor)));
    }
  }

  /** @returns false when the candidate has nothing more to do today */
  private async round(visitor: HttpVisitor): Promise<boolean> {
    const now = await this.people.insist(() => visitor.get('/'));
    if (now.html.querySelector('form[action="/study/rounds"]') === null) return false;
    const sent = await this.people.insist(() => visitor.submit(now, '/study/rounds', { minutes: '20' }), true);
    if (sent.location === undefined) throw new Error(`no round: ${sent.status} ${sent.words}`);
    for (let asked = 0; ; asked += 1) {
      const page = await this.people.insist(() => visitor.get(sent.location as string));
      if (page.status === 303) return asked > 0;
      if (this.enough(this.begun)) return false;
      this.begun += 1;
      await this.answer(visitor, page);
    }
  }

  private async answer(visitor: HttpVisitor, page: Shown): Promise<void> {
    const fields = anyFields(page);
    const { status, words } = await this.people.insist(() => visitor.submit(page, '/study/answer', fields), true);
    if (status !== 303) throw new Error(`The answer was not taken: ${status} ${words}`);
    const inParts = Object.keys(fields).some((name) => name.startsWith('part-'));
    this.acknowledged.set(tokenOf(page), inParts ? '' : (fields['option'] ?? fields['value'] ?? ''));
  }
}

/** Candidates who sit papers: each saves several choices at a time, takes some back, and hands in twice at the same moment. */
export class Sitting {
  /** Each sitting with the last letter that the server said it has for each question. */
  readonly sheets = new Map<string, Map<number, string>>();
  readonly handedIn = new Set<string>();

  constructor(private readonly people: Insisting) {}

  /** One paper after another until it is over; what is begun is handed in. */
  async work(seed: string, over: () => boolean): Promise<void> {
    const random = randomFrom(seed);
    for (let visitor = await this.people.candidate(), sat = 0; !over(); sat += 1) {
      if (sat % 5 === 4) visitor = await this.people.candidate();
      await this.paper(visitor, random, over);
    }
  }

  private async paper(visitor: HttpVisitor, random: ReturnType<typeof randomFrom>, over: () => boolean): Promise<void> {
    const { people } = this;
    const fresh = await people.insist(() => visitor.get('/papers'));
    const made = await people.insist(() => visitor.submit(fresh, '/papers', { paper: 'entry-safety/safety-20', extra: '0' }), true);
    const sitting = made.location ?? '';
    const cover = await people.insist(() => visitor.get(sitting));
    await people.insist(() => visitor.submit(cover, `${sitting}/begin`, { pages: 'all' }), true);
    const page = await people.insist(() => visitor.get(`${sitting}/all`));
    const letters = page.html
      .querySelectorAll('fieldset')
      .map((field) => field.querySelectorAll('input[type=radio]').map((input) => input.getAttribute('value') ?? ''));
    if (letters.length !== 20) throw new Error(`no paper: ${page.status} ${page.words.slice(0, 300)}`);
    const sheet = new Map<number, string>();
    this.sheets.set(sitting.split('/').at(-1) ?? '', sheet);
    for (let saves = 0; saves < 14 && !(over() && saves > 2); saves += 1) {
      const positions = [...new Set([0, 1, 2].map(() => 1 + random.below(20)))];
      const chosen = positions.map((position): [number, string] => {
        const offered = letters[position - 1] ?? [];
        return [position, offered[random.below(offered.length)] ?? ''];
      });
      const fields = Object.fromEntries(chosen.map(([position, letter]) => [`c${position}`, letter]));
      const saved = await people.insist(() => visitor.submit(page, `${sitting}/save`, { ...fields, go: 'all' }), true);
      if (saved.location !== `${sitting}/all`) throw new Error(`not saved: ${saved.status} ${saved.location} ${saved.words}`);
      for (const [position, letter] of chosen) sheet.set(position, letter);
      await wait(random.below(400));
    }
    const last = await people.insist(() => visitor.get(`${sitting}/hand-in`));
    const send = () => people.insist(() => visitor.submit(last, `${sitting}/hand-in`), true);
    for (const { location } of await Promise.all([send(), send()]))
      if (location !== `${sitting}/result`) throw new Error(`not handed in: ${location}`);
    this.handedIn.add(sitting.split('/').at(-1) ?? '');
    const result = await people.insist(() => visitor.get(`${sitting}/result`));
    if (result.status !== 200) throw new Error(`no result: ${result.status}`);
  }
}

/** Whoever adds packs: a tutor by the page, and the command. */
export class Adding {
  /** Ids of packs that the page or the command said are in the bank. */
  readonly acknowledged = new Set<string>();
  /** How often the command had to be given again. */
  commandsAgain = 0;
  private tutor: HttpVisitor | undefined;

  constructor(private readonly people: Insisting) {}

  /** @param link the address that a new server prints for its first administrator */
  async comeIn(link: string): Promise<void> {
    const visitor = this.people.visitor();
    const path = new URL(link).pathname;
    await visitor.submit(await visitor.get(path), path, { name: 'Alma', password });
    if ((await visitor.get('/packs')).status !== 200) throw new Error('The administrator did not come in.');
    this.tutor = visitor;
  }

  /** @param begun called when all is sent but the confirmation */
  async byPage(id: string, archive: Buffer, begun: () => void): Promise<void> {
    const { people, tutor } = this as unknown as { people: Insisting; tutor: HttpVisitor };
    const list = await people.insist(() => tutor.get('/packs'));
    const sent = await people.insist(() => tutor.sendFile(list, '/packs', `${id}.zip`, archive), true);
    const upload = sent.location ?? '';
    const report = await people.insist(() => tutor.get(upload));
    if (!report.words.includes('can be added')) throw new Error(`not taken: ${report.status} ${report.words.slice(0, 300)}`);
    begun();
    await people.insist(() => tutor.submit(report, `${upload}/add`), true);
    const after = await people.insist(() => tutor.get(upload));
    if (!after.words.includes('is in the bank')) throw new Error(`not added: ${after.status} ${after.words.slice(0, 300)}`);
    this.acknowledged.add(id);
  }

  /** @param begun called when the command is about to write */
  async byCommand(id: string, file: string, env: Record<string, string>, begun: () => void): Promise<void> {
    for (let tries = 0; tries < 20; tries += 1) {
      const { code, said } = await addByCommand(file, env, begun);
      if (code === 0) return void this.acknowledged.add(id);
      // 2 is "could not be tried": the database was away.
      if (code !== 2) throw new Error(`rungwise add ended with ${code}: ${said}`);
      this.commandsAgain += 1;
      await wait(500);
    }
    throw new Error('rungwise add was not done in twenty tries');
  }
}

function addByCommand(file: string, env: Record<string, string>, begun: () => void): Promise<{ code: number | null; said: string }> {
  const child = spawn(process.execPath, [join(projectFolder, 'dist', 'src', 'cli', 'main.js'), 'add', file], {
    cwd: projectFolder,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, DATABASE_URL: '', ...env },
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      if (said.includes('Comparing')) begun();
    });
  return new Promise((resolve) => child.once('close', (code) => resolve({ code, said })));
}
