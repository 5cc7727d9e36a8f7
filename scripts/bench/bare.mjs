// What the real application is held against: the least that could do the same work, with the same packages.
import formbody from '@fastify/formbody';
import Fastify from 'fastify';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fsrs } from 'ts-fsrs';
import { queriesService } from '../../dist/src/bank/index.js';
import { calculatorPage } from '../../dist/src/calculators/pages.js';
import { calculatorsService } from '../../dist/src/calculators/service.js';
import { systemClock } from '../../dist/src/platform/clock.js';
import { openDatabase } from '../../dist/src/platform/db.js';
import { questionsService } from '../../dist/src/questions/index.js';
import { nowPage, studyService } from '../../dist/src/study/index.js';
import { questionPage } from '../../dist/src/study/pages.js';
import { loadViews } from '../../dist/src/web/plugins/views.js';
import { projectFolder } from '../processes.mjs';
import { answerTasks } from './child.mjs';

const readMemory = 'SELECT stability, difficulty, last_day, reps FROM memory WHERE person_id = $1 AND question_id = $2';
const record = `
  WITH moved AS (
    UPDATE memory SET stability = $8, difficulty = $9, last_day = $10, due_day = $11, reps = reps + 1
    WHERE person_id = $2 AND question_id = $3 AND reps = $12 RETURNING reps
  )
  INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", rating, day, answered_at,
    stability_after, difficulty_after, due_day_after, reps_after, stability_before, difficulty_before, last_day_before)
  SELECT $1, $2, $3, 1, 0, 'uk', $4, $5, $6, $7, $10, now(), $8, $9, $11, moved.reps, $13, $14, $15 FROM moved`;

/** One read, the scheduler, one statement that writes: nothing asked about who sends it or whether it makes sense. */
function answers(app, db) {
  const scheduler = fsrs({ enable_fuzz: false });
  app.post('/answer/:person/:question', async (request, reply) => {
    const { person, question } = request.params;
    const { token, option, certainty } = request.body;
    const { rows } = await db.pool.query({ name: 'bare-read', text: readMemory, values: [person, question] });
    const before = rows[0];
    const day = Math.floor(Date.now() / 86_400_000);
    const right = option === '0';
    const rating = right ? (certainty === 'sure' ? 3 : 2) : 1;
    const state = before.stability === null ? null : { stability: before.stability, difficulty: before.difficulty };
    const { stability, difficulty } = scheduler.next_state(state, state === null ? 0 : Math.max(0, day - before.last_day), rating);
    const due = day + scheduler.next_interval(stability, 0);
    const now = [rating, stability, difficulty, day, due];
    const values = [
      token,
      person,
      question,
      option,
      certainty,
      right,
      ...now,
      before.reps,
      before.stability,
      before.difficulty,
      before.last_day,
    ];
    const { rowCount } = await db.pool.query({ name: 'bare-record', text: record, values });
    if (rowCount !== 1) return reply.code(409).send();
    return reply.redirect(`/study/answers/${token}`, 303);
  });
}

/** One statement, which is a transaction: the sitting must run and goes on running until the choice is on the sheet. */
const saveChoice = `
  INSERT INTO sitting_answer (sitting_id, position, choice, again, saved_at)
  SELECT id, $3, $4, false, $5 FROM sitting
  WHERE id = $1 AND person_id = $2 AND handed_in_at IS NULL AND started_at IS NOT NULL AND deadline_at >= $5 FOR SHARE
  ON CONFLICT (sitting_id, position) DO UPDATE SET choice = excluded.choice, again = excluded.again, saved_at = excluded.saved_at`;

/** Not asked: who sends it, whether it comes from our own page, whether the paper has such a question and letter. */
function sheets(app, db) {
  app.post('/sheet/:person/:sitting/:position', async (request, reply) => {
    const { person, sitting, position } = request.params;
    const values = [sitting, person, position, request.body[`c${position}`], new Date()];
    const { rowCount } = await db.pool.query({ name: 'bare-save', text: saveChoice, values });
    return rowCount === 1 ? reply.send({ saved: true }) : reply.code(409).send({ saved: false });
  });
}

const start = { href: '/', label: 'Now', current: true };
const about = { href: '/about', label: 'About', current: false };

/** Pages whose data was found beforehand, by their number: nothing is left but drawing them. */
function drawing(app, views, path, pages) {
  app.get(`/${path}/:number`, (request, reply) => {
    const { page, chrome } = pages[request.params.number];
    reply
      .header('content-type', 'text/html; charset=utf-8')
      .send(views.page(page, { nav: [start, about], styles: [], plainHttp: false, ...chrome }));
  });
}

async function pages(app, db, people) {
  const questions = questionsService({ db, clock: systemClock });
  const study = studyService({ db, clock: systemClock, questions });
  const queries = queriesService({ db, clock: systemClock, questions });
  const calculators = calculatorsService({ questions });
  const views = await loadViews(join(projectFolder, 'views'), join(projectFolder, 'public'));
  const you = (person) => ({ name: person.displayName, href: '/me' });

  const question = async ({ person, round, csrf }) => {
    const item = await study.question(person, round);
    const scripts = item.put.task.kind === 'number' ? ['numeric-field'] : [];
    const chrome = { title: `Question ${item.place} of ${item.total}`, layout: 'one', scripts, you: you(person) };
    return { page: questionPage(item, csrf, null), chrome };
  };
  drawing(app, views, 'page', await Promise.all(people.map(question)));

  const home = async ({ person, round, csrf }) => ({
    page: nowPage(await study.overview(person), person, csrf, round, await queries.counts(person), null),
    chrome: { title: 'Now', layout: 'two', scripts: [], you: you(person) },
  });
  drawing(app, views, 'home', await Promise.all(people.map(home)));

  const worked = await calculators.work(null, 'fuse-from-power', { power: ['1150'] }, 'uk');
  const chrome = { title: worked.calculation.title, layout: 'two', scripts: ['calculator', 'numeric-field'], you: null };
  drawing(app, views, 'calculator', [{ page: calculatorPage(worked), chrome }]);
}

async function serve({ url, work }) {
  const { people } = JSON.parse(await readFile(work, 'utf8'));
  const db = openDatabase({ url, log: console.error });
  const app = Fastify({ logger: false });
  await app.register(formbody);
  answers(app, db);
  sheets(app, db);
  await pages(app, db, people);
  return app.listen({ port: 0, host: '127.0.0.1' });
}

answerTasks({ serve });
