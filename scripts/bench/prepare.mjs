// Fills the benchmark's database: a pack, candidates with sessions, many rounds whose questions nobody has answered yet, and papers begun.
import { randomBytes, randomUUID } from 'node:crypto';
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { accountsService, ensureInstallation } from '../../dist/src/accounts/index.js';
import { packsService, readPackFolder } from '../../dist/src/packs/index.js';
import { systemClock } from '../../dist/src/platform/clock.js';
import { openDatabase } from '../../dist/src/platform/db.js';
import { migrate } from '../../dist/src/platform/migrate.js';
import { questionsService } from '../../dist/src/questions/index.js';
import { enrol, enrolAll, studyService } from '../../dist/src/study/index.js';
import { tmpdir } from 'node:os';
import { readSettings } from '../../dist/src/platform/settings.js';
import { serverPlace } from '../../dist/src/web/server-place.js';
import { buildApp } from '../../dist/src/web/app.js';
import { projectFolder } from '../processes.mjs';
import { answerTasks } from './child.mjs';
import { sittersOf } from './papers.mjs';
import { comeIn, lookAt } from './visitors.mjs';

const questionsInRound = 12;
const tables = ['memory', 'round', 'round_item', 'answer', 'session', 'person', 'question_revision', 'paper', 'paper_item', 'sitting'];

/**
 * Rounds of single questions, as a round is stored: every answer posted needs a question that has none yet.
 * Questions take turns, so that each of a candidate's memories moves again and again.
 */
const manyRounds = `
  WITH made AS (
    INSERT INTO round (id, person_id, minutes, day, region, started_at)
    SELECT gen_random_uuid(), p.id, 10, $2, p.region, now() - interval '1 day' + n * interval '1 second'
    FROM person p, generate_series(1, $1) AS n ORDER BY n, p.id RETURNING id, person_id, region
  ), numbered AS (
    SELECT id, person_id, region, row_number() OVER (PARTITION BY person_id) AS n FROM made
  ), single AS (
    SELECT r.region, q.id, q.current_revision, row_number() OVER (PARTITION BY r.region ORDER BY q.id) AS n, count(*) OVER (PARTITION BY r.region) AS of
    FROM (SELECT DISTINCT region FROM person) r JOIN question q ON q.kind = 'single' AND NOT q.retired AND r.region = ANY (q.regions)
  )
  INSERT INTO round_item (token, round_id, position, question_id, revision, seed)
  SELECT gen_random_uuid(), d.id, 2 * i, s.id, s.current_revision, floor(random() * 2147483647)::int
  FROM numbered d, generate_series(1, ${questionsInRound}) AS i, single s
  WHERE s.region = d.region AND s.n = (d.n * ${questionsInRound} + i) % s.of + 1`;

/**
 * A quarter of the rounds lie behind: answered a week ago. A table of answers that is empty when it is analysed would be planned as one
 * that stays empty, and every look into it would read the whole of it.
 */
const past = `
  INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", rating, day, answered_at,
    stability_after, difficulty_after, due_day_after, reps_after)
  SELECT i.token, r.person_id, i.question_id, i.revision, i.seed, r.region, '0', 'fairly', true, 2, $1 - 7, now() - interval '7 days', 3, 5, $1, 1
  FROM (SELECT *, row_number() OVER (PARTITION BY person_id ORDER BY started_at) AS n FROM round WHERE minutes = 10 AND day = $1) r
    JOIN round_item i ON i.round_id = r.id WHERE r.n <= $2`;
const remembered = 'UPDATE memory SET stability = 3, difficulty = 5, last_day = $1 - 7, due_day = $1, reps = 1 WHERE person_id % 2 = 0';

async function loadPacks(db) {
  const home = join(projectFolder, 'question-packs');
  for (const entry of (await readdir(home, { withFileTypes: true })).filter((found) => found.isDirectory())) {
    const { pack, findings } = await readPackFolder(join(home, entry.name));
    if (pack === null) throw new Error(`The pack ${entry.name} has faults: ${findings.map((finding) => finding.message).join('; ')}`);
    await packsService({ db, enrolAll }).load(pack);
  }
}

/** A candidate who has come in and stands before a question, with what the browser would now send. */
async function candidate(services, number) {
  const { accounts, study, server } = services;
  const cookie = await comeIn(accounts, `Candidate ${number}`, `198.51.100.${number}`);
  const person = await accounts.whoHolds(cookie);
  const round = randomUUID();
  await study.startRound(person, { round, minutes: 10 });
  return { person, round, ...(await lookAt(server, cookie, `/study/rounds/${round}`)) };
}

async function unanswered(db, personId, besides) {
  const { rows } = await db.pool.query(
    `SELECT i.token, i.question_id AS question FROM round_item i JOIN round r ON r.id = i.round_id
     LEFT JOIN answer a ON a.person_id = r.person_id AND a.token = i.token
     WHERE r.person_id = $1 AND r.id <> $2 AND a.token IS NULL ORDER BY r.started_at, i.position`,
    [personId, besides],
  );
  return rows.map(({ token, question }) => [token, question]);
}

async function fill({ url, candidates, rounds, sitting, work }) {
  await migrate(url, join(projectFolder, 'prisma', 'migrations'));
  const db = openDatabase({ url, log: console.error });
  await loadPacks(db);
  const clock = systemClock;
  const installation = await ensureInstallation(db, { cookieSecret: randomBytes(32), phraseSalt: randomBytes(16) });
  const { place } = await serverPlace(readSettings({ DATABASE_URL: url }), tmpdir(), url);
  const { server } = await buildApp({ db, clock, installation, place, origin: null, trustProxy: [], logger: false });
  const study = studyService({ db, clock, questions: questionsService({ db, clock }) });
  const services = { accounts: accountsService({ db, clock, installation, enrol }), study, server };
  const people = [];
  for (let number = 1; number <= candidates; number += 1) people.push(await candidate(services, number));
  const today = Math.floor(Date.now() / 86_400_000);
  await db.pool.query(manyRounds, [rounds, today]);
  await db.pool.query(past, [today, Math.floor(rounds / 4)]);
  await db.pool.query(remembered, [today]);
  for (const one of people) one.items = await unanswered(db, one.person.id, one.round);
  // After the rounds, which everybody who is there by then is given.
  const sitters = await sittersOf(services, db, sitting);
  await db.pool.query(`VACUUM ANALYZE ${tables.join(', ')}`);
  await writeFile(work, JSON.stringify({ people, sitters }));
  await server.close();
  await db.close();
  return people.reduce((sum, { items }) => sum + items.length, 0);
}

answerTasks({ fill });
