import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { randomFrom } from '../../src/core/random.js';
import { startEmbeddedPostgres } from '../../src/platform/embedded-postgres/index.js';
import { readKept, type Kept } from '../support/after-crash.js';
import { temporaryFolder } from '../support/embedded.js';
import { databaseFamily, killAll } from '../support/killing.js';
import { manyQuestions, questionsEach } from '../support/many-questions.js';
import { Adding, Answering, Insisting, Sitting } from '../support/persistent.js';
import { freePort, startServer, type ServerProcess } from '../support/server-process.js';

/**
 * Kill -9 of the server, of PostgreSQL and of both while answers are given, papers are sat and packs are added: what was acknowledged is
 * there once, and nothing is there by half. Two thousand answers; RUNGWISE_CRASH=full asks for ten thousand, which take some five minutes
 * of processor time.
 */

const wanted = process.env['RUNGWISE_CRASH'] === 'full' ? 10_000 : 2000;
const [candidates, sitters] = [8, 4];

interface Moment {
  what: 'server' | 'database' | 'both';
  /** What is under way besides answers and papers. */
  during: 'nothing' | 'page' | 'command';
  /** Answers acknowledged before. */
  after: number;
  /** Milliseconds more, from there or from the beginning of what is under way. */
  delay: number;
}

/** Each of the three with each of the three, at a moment of its own ninth of the work. */
function moments(): Moment[] {
  const random = randomFrom('crash 2');
  const kinds = (['server', 'database', 'both'] as const).flatMap((what) =>
    (['page', 'nothing', 'command'] as const).map((during) => ({ what, during })),
  );
  // Shuffled by hand, so that the kinds alternate.
  return [0, 4, 8, 1, 5, 6, 2, 3, 7].map((which, ninth) => ({
    ...(kinds[which] as (typeof kinds)[number]),
    after: Math.floor((wanted / 9.5) * (ninth + 0.1 + 0.8 * random.next())),
    delay: random.below(120),
  }));
}

const plan = moments();

it('keeps everything acknowledged once when server and database are killed amid answers, papers and packs', async () => {
  const { folder, remove } = await temporaryFolder();
  const dataFolder = join(folder, 'data');
  const env = { PORT: String(await freePort()), RUNGWISE_DATA: dataFolder };
  let server = await startServer(env);
  const people = new Insisting(server.address);
  const killed: string[] = [];
  // As many as wanted, and on until the last kill was survived: a fast machine answers while a pack is got ready.
  const answering = new Answering(people, (begun) => begun >= wanted && killed.length === plan.length);
  const [sitting, adding] = [new Sitting(people), new Adding(people)];
  try {
    await adding.comeIn(/http:\S+\/set-up\/\S+/.exec(server.said())?.[0] ?? '');
    let over = false;
    const begun = Date.now();
    const answers = Promise.all(Array.from({ length: candidates }, () => answering.work())).finally(() => (over = true));
    const papers = Promise.all(Array.from({ length: sitters }, (_, index) => sitting.work(`sitter ${index}`, () => over)));
    const packs: Promise<void>[] = [];
    for (const all of [answers, papers]) all.catch(() => (over = true));
    for (const [index, { what, during, after, delay }] of plan.entries()) {
      while (!over && answering.acknowledged.size < after) await wait(2);
      if (over) break;
      if (during !== 'nothing') packs.push((await underWay(during, `crash-${index}`)).added);
      await wait(delay);
      const family = what === 'server' ? [] : await databaseFamily(dataFolder);
      const ended = what === 'database' ? undefined : server.end('SIGKILL');
      killAll(family);
      if (ended !== undefined) {
        expect(await ended).toBeNull();
        server = await startServer(env);
      }
      killed.push(what);
    }
    await Promise.all([answers, papers, ...packs]);
    const seconds = (Date.now() - begun) / 1000;
    expect(killed).toEqual(plan.map(({ what }) => what));
    expect(await server.end('SIGTERM')).toBe(0);
    const kept = await readKept(dataFolder);
    tell(seconds, kept);
    expectAll(kept);
  } finally {
    await leaveNothingRunning(dataFolder, server);
    await remove();
  }

  /** Begins to add a pack. @returns what to wait for at the end, once it is about to be written */
  async function underWay(during: 'page' | 'command', id: string): Promise<{ added: Promise<void> }> {
    const archive = await manyQuestions(id);
    const file = join(folder, `${id}.zip`);
    await writeFile(file, archive);
    let added = Promise.resolve();
    await new Promise<void>((resolve, reject) => {
      added = during === 'page' ? adding.byPage(id, archive, resolve) : adding.byCommand(id, file, { RUNGWISE_DATA: dataFolder }, resolve);
      added.catch(reject);
    });
    return { added };
  }

  function expectAll(kept: Kept): void {
    // The kills met people at work: some things had to be sent again, and nothing was worse than "try again".
    expect(people.sentAgain).toBeGreaterThan(0);
    expect([...people.failures.keys()].sort()).toEqual(['503', 'no answer']);

    const bySaid = [...answering.acknowledged].sort();
    expect(bySaid.length).toBeGreaterThanOrEqual(wanted);
    // Of a question in parts the order of the pack is kept, which the page does not tell: there only the token is compared.
    const said = (token: string, given: string): string => (answering.acknowledged.get(token) === '' ? '' : given);
    expect(kept.answers.map(({ token, given }): [string, string] => [token, said(token, given)]).sort()).toEqual(bySaid);
    expect(kept.answers.filter(({ times }) => times !== 1)).toEqual([]);

    const onSheets = kept.sittings.reduce((sum, { recorded }) => sum + recorded, 0);
    expect(kept.miscounted).toEqual([]);
    expect(kept.replay).toEqual({ answers: bySaid.length + onSheets, differences: [] });
    expect(kept.loose).toEqual([]);

    const sat = kept.sittings.filter(({ id }) => sitting.sheets.has(id));
    expect(sat).toHaveLength(sitting.sheets.size);
    for (const { id, handedIn, right, sheet, marked, recorded } of sat) {
      const letters = Object.fromEntries(sitting.sheets.get(id) ?? []);
      expect({ id, handedIn, right, sheet, recorded }).toEqual({
        id,
        handedIn: sitting.handedIn.has(id),
        right: marked,
        sheet: letters,
        recorded: Object.keys(letters).length,
      });
    }

    const added = kept.packs.filter(({ slug }) => slug.startsWith('crash-'));
    expect(added.map(({ slug }) => slug).sort()).toEqual([...adding.acknowledged].sort());
    for (const pack of added) expect(pack).toEqual({ slug: pack.slug, questions: questionsEach, revisions: questionsEach, topics: 1 });
  }

  function tell(seconds: number, kept: Kept): void {
    const times = (value: string): number => plan.filter(({ what }) => what === value).length;
    console.log(
      `killed: server ${times('server')}, database ${times('database')}, both ${times('both')}; in ${seconds.toFixed(0)} s ` +
        `${answering.acknowledged.size} answers acknowledged, ${kept.answers.length} kept; ${sitting.handedIn.size} papers handed in; ` +
        `${adding.acknowledged.size} packs added; sent again ${people.sentAgain}, commands again ${adding.commandsAgain}; failures ${JSON.stringify([...people.failures])}`,
    );
  }
}, 900_000);

async function leaveNothingRunning(dataFolder: string, server: ServerProcess): Promise<void> {
  if (server.running()) await server.end('SIGKILL');
  const database = await startEmbeddedPostgres({ dataFolder, log: () => undefined });
  await database.stop();
}
