import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { known, RungwiseError } from '../core/errors.js';
import { aboutForm, answerForm, atForm, queryParams, questionParams, raiseForm, raiseText, readSearch } from './forms.js';
import { bankPage } from './list-page.js';
import type { QueriesService } from './queries.js';
import { queriesPage, queryPage, raisePage } from './query-pages.js';
import { bankQuestionPage } from './question-page.js';
import type { BankService } from './service.js';

/** The bank for tutors and editors, and queries for everybody who comes here. */
export function bankRoutes({ bank, queries }: { bank: BankService; queries: QueriesService }) {
  return async function routes(app: FastifyInstance): Promise<void> {
    browsing(app, bank, queries);
    raising(app, queries);
    answering(app, queries);
  };
}

function browsing(app: FastifyInstance, bank: BankService, queries: QueriesService): void {
  const config = { access: 'read-bank' as const };

  app.get('/bank', { config }, async (request, reply) => {
    const person = request.who();
    const list = await bank.list(person, readSearch(request.query));
    return reply.page(bankPage(list, (await queries.counts(person)).waiting, person), { title: 'Bank' });
  });

  app.get('/bank/questions/:question', { config }, async (request, reply) => {
    const person = request.who();
    const { question } = known(questionParams.safeParse(request.params));
    const view = await bank.question(person, question, atForm.parse(request.query ?? {}), readSearch(request.query));
    return reply.page(bankQuestionPage(view, person), { title: view.bank.code, layout: 'two' });
  });
}

const raiseConfig = { access: 'raise-query' as const };
const full = 'Twenty of your queries wait for an answer. Copy what you wrote, and send it when some are answered.';

function raising(app: FastifyInstance, queries: QueriesService): void {
  app.get('/queries', { config: raiseConfig }, async (request, reply) => {
    const person = request.who();
    return reply.page(queriesPage(await queries.list(person), person), { title: 'Queries' });
  });

  app.get('/queries/new', { config: raiseConfig }, async (request, reply) => {
    const asked = await queries.about(request.who(), known(aboutForm.safeParse(request.query)));
    return reply.page(raisePage(asked, randomUUID(), reply.formToken(), { value: '', why: null }), { title: 'Raise a query' });
  });

  app.post('/queries', { config: raiseConfig }, async (request, reply) => {
    const person = request.who();
    const form = raiseForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    const { query: id, ...about } = form.data;
    const text = raiseText.safeParse(request.body);
    const sent = text.success && (await queries.raise(person, about, id, text.data.body));
    if (sent) return reply.redirect(`/queries/${id}`, 303);
    reply.code(422);
    const why = text.success ? full : (text.error.issues[0]?.message ?? '');
    const page = raisePage(await queries.about(person, about), id, reply.formToken(), {
      value: typed(request.body, 'body'),
      why,
    });
    return reply.page(page, { title: 'Not sent yet' });
  });
}

function answering(app: FastifyInstance, queries: QueriesService): void {
  app.get('/queries/:query', { config: raiseConfig }, async (request, reply) => {
    const person = request.who();
    const { query } = known(queryParams.safeParse(request.params));
    return reply.page(queryPage(await queries.find(person, query), person, reply.formToken(), null), { title: 'Query' });
  });

  app.post('/queries/:query/answer', { config: { access: 'read-bank' as const } }, async (request, reply) => {
    const person = request.who();
    const { query } = known(queryParams.safeParse(request.params));
    const form = answerForm.safeParse(request.body);
    const { before } = form.data ?? { before: null };
    const sent = form.success && (await queries.answer(person, query, form.data.answer, before === null ? null : new Date(before)));
    if (sent) return reply.redirect(`/queries/${query}`, 303);
    reply.code(422);
    const why = form.success
      ? 'Somebody else answered meanwhile. Their answer stands above; send yours again if it should replace it.'
      : (form.error.issues[0]?.message ?? '');
    const page = queryPage(await queries.find(person, query), person, reply.formToken(), { value: typed(request.body, 'answer'), why });
    return reply.page(page, { title: 'Not sent yet' });
  });
}

function typed(body: unknown, name: string): string {
  const value = (body as Record<string, unknown> | null | undefined)?.[name];
  return typeof value === 'string' ? value : '';
}
