import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { known, RungwiseError } from '../core/errors.js';
import { answerForm, roundForm, roundParams, tokenParams, type AnswerForm } from './forms.js';
import { outcomePage } from './outcome-page.js';
import { questionPage, roundEndPage } from './pages.js';
import { readGiven, type AskedItem, type Refusal } from './put-question.js';
import type { StudyService } from './service.js';

/** Rounds of practice. Every address here is a candidate's own: another's round answers as one that does not exist. */
export function studyRoutes(study: StudyService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    rounds(app, study);
    answers(app, study);
  };
}

const config = { access: 'study' as const };

function rounds(app: FastifyInstance, study: StudyService): void {
  app.post('/study/rounds', { config }, async (request, reply) => {
    const form = roundForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    await study.startRound(request.who(), form.data);
    return reply.redirect(`/study/rounds/${form.data.round}`, 303);
  });

  app.get('/study/rounds/:round', { config }, async (request, reply) => {
    const { round } = known(roundParams.safeParse(request.params));
    const item = await study.question(request.who(), round);
    if (item === null) return reply.redirect(`/study/rounds/${round}/end`, 303);
    const refusal = refusalOf(item, request.query);
    return reply.page(questionPage(item, reply.formToken(), refusal), {
      title: `${refusal === null ? 'Question' : 'Not handed in yet: question'} ${item.place} of ${item.total}`,
      scripts: scriptsFor(item),
    });
  });

  app.get('/study/rounds/:round/end', { config }, async (request, reply) => {
    const { round } = known(roundParams.safeParse(request.params));
    const person = request.who();
    const page = roundEndPage(await study.roundEnd(person, round), reply.formToken(), randomUUID(), person.displayName);
    return reply.page(page, { title: 'End of the round' });
  });
}

function answers(app: FastifyInstance, study: StudyService): void {
  app.post('/study/answer', { config }, async (request, reply) => {
    const form = answerForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    const result = await study.answer(request.who(), form.data);
    if (result.state === 'recorded') return reply.redirect(`/study/answers/${result.token}`, 303);
    // An address that can be fetched again, so that Back and reloading meet no warning of the browser's.
    return reply.redirect(`/study/rounds/${result.item.roundId}?${fieldsOf(form.data)}`, 303);
  });

  app.get('/study/answers/:token', { config }, async (request, reply) => {
    const { token } = known(tokenParams.safeParse(request.params));
    const view = await study.outcome(request.who(), token);
    if (view === null) throw new RungwiseError('not-found');
    const page = outcomePage(view);
    return reply.page(page, { title: page.data.verdict.word, layout: 'two' });
  });
}

/** What was entered and could not be taken, as the address of the question carries it. */
function fieldsOf(form: AnswerForm): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(form)) if (typeof value === 'string') query.set(name, value);
  return query.toString();
}

/** Why what the address carries could not be taken; null when it carries nothing, or something of another question. */
function refusalOf(item: AskedItem, query: unknown): Refusal | null {
  const form = answerForm.safeParse(query);
  if (!form.success || form.data.token !== item.token) return null;
  const given = readGiven(item.put, form.data);
  return 'why' in given ? given : null;
}

/** The scripts that make a kind of question handier; each works without. */
function scriptsFor({ put }: AskedItem): string[] {
  if (put.task.kind === 'number') return ['numeric-field'];
  return put.task.kind === 'order' ? ['order-field'] : [];
}
