// What a tutor's pages cost: the class grid by the size of the class, and the standing of everybody by how many study here. Each figure is
// a median; sizes grow by a known factor, and what counts is that the cost grows no faster.
import { join } from 'node:path';
import pg from 'pg';
import { classChances } from '../../dist/src/outlook/index.js';
import { packsService, readPackFolder } from '../../dist/src/packs/index.js';
import { systemClock } from '../../dist/src/platform/clock.js';
import { openDatabase } from '../../dist/src/platform/db.js';
import { migrate } from '../../dist/src/platform/migrate.js';
import { questionsService } from '../../dist/src/questions/index.js';
import { enrolAll } from '../../dist/src/study/index.js';
import { teachingService } from '../../dist/src/teaching/index.js';
import { projectFolder } from '../processes.mjs';
import { answerTasks } from './child.mjs';
import { questionLists } from './questions.mjs';

const classSizes = [15, 30, 60];
const populations = [2_500, 10_000];
const questionsEach = 400;
const times = 15;

const addPeople = `
  WITH made AS (
    INSERT INTO person (display_name, role, time_zone, region, created_at, last_seen_at)
    SELECT 'Candidate ' || n, 'candidate', 'Europe/London', 'uk', now(), now() FROM generate_series($1::int, $2::int) n RETURNING id
  ), asked AS (
    SELECT id, topic_id FROM question WHERE 'uk' = ANY (regions) AND NOT retired ORDER BY id LIMIT ${questionsEach}
  )
  INSERT INTO memory (person_id, question_id, topic_id, stability, difficulty, last_day, due_day, reps)
  SELECT m.id, a.id, a.topic_id, CASE WHEN met THEN 1 + random() * 60 END, CASE WHEN met THEN 5 END, CASE WHEN met THEN $3::int - (random() * 30)::int END,
    CASE WHEN met THEN $3::int END, CASE WHEN met THEN 3 ELSE 0 END
  FROM made m, asked a, LATERAL (SELECT (m.id * 7 + a.id * 13) % 10 < 7 AS met) x ORDER BY m.id, a.id`;

/** First answers only: they are what an outlook reads of the record. */
const addAnswers = `
  INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", rating, day, answered_at,
    stability_after, difficulty_after, due_day_after, reps_after)
  SELECT gen_random_uuid(), m.person_id, m.question_id, 1, 1, 'uk', '0', 'fairly', (m.question_id % 3) > 0, 3, $1, now() - interval '9 days', 3, 5, $1, 1
  FROM memory m JOIN class_member c ON c.person_id = m.person_id WHERE m.stability IS NOT NULL`;

async function median(count, work) {
  const taken = [];
  for (let turn = 0; turn < count; turn += 1) {
    const begun = performance.now();
    await work(turn);
    taken.push(performance.now() - begun);
  }
  return taken.sort((a, b) => a - b)[count >> 1];
}

/** Filling takes longer than a server's statements may. */
async function filling(url, work) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  return await work(client).finally(() => client.end());
}

const addCandidates = (url, from, to, today) =>
  filling(url, async (client) => {
    await client.query(addPeople, [from, to, today]);
    await client.query('VACUUM ANALYZE memory, person');
  });

async function fillClasses(db, url, today) {
  await addCandidates(url, 1, populations[0], today);
  const ids = [];
  for (const size of classSizes) {
    const { rows } = await db.pool.query(`INSERT INTO study_class (name, paper) VALUES ($1, 'entry-safety/safety-26') RETURNING id`, [
      `Class of ${size}`,
    ]);
    await db.pool.query(
      `INSERT INTO class_member (class_id, person_id) SELECT $1, id FROM person WHERE role = 'candidate' AND id NOT IN (SELECT person_id FROM class_member) ORDER BY id LIMIT $2`,
      [rows[0].id, size],
    );
    ids.push(rows[0].id);
  }
  await db.pool.query(addAnswers, [today]);
  await db.pool.query('VACUUM ANALYZE');
  return ids;
}

async function measure({ url }) {
  await migrate(url, join(projectFolder, 'prisma', 'migrations'));
  const db = openDatabase({ url, log: console.error });
  const { pack } = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'), { tryFamilies: false });
  await packsService({ db, enrolAll }).load(pack);
  const today = Math.floor(Date.now() / 86_400_000);
  const clock = systemClock;
  const questions = questionsService({ db, clock });
  const teaching = () => teachingService({ db, clock, questions, chances: classChances({ db, questions }) });
  const person = { id: 0, role: 'administrator', timeZone: 'Europe/London' };
  const ids = await fillClasses(db, url, today);
  const grids = [];
  for (const [index, id] of ids.entries()) {
    await teaching().stand(person, id, 'today');
    const first = await median(times, () => teaching().stand(person, id, 'today'));
    const kept = teaching();
    await kept.stand(person, id, 'today');
    grids.push({ size: classSizes[index], first, next: await median(times, () => kept.stand(person, id, 'today')) });
  }
  const everybody = [];
  const lists = [];
  const listsOf = questionLists({ db, clock, questions, person, median });
  for (const [index, size] of populations.entries()) {
    if (index > 0) await addCandidates(url, populations[index - 1] + 1, size, today);
    lists.push({ size, ...(await filling(url, (client) => listsOf(client, ids[1], today))) });
    const taken = await median(3, async () => {
      await db.pool.query('TRUNCATE topic_day');
      await teaching().club(person);
    });
    everybody.push({ size, taken });
  }
  await db.close();
  return { grids, everybody, lists, questionsEach };
}

answerTasks({ measure });
