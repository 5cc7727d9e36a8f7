import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { known, RungwiseError } from '../core/errors.js';
import { beginForm, ownPaperForm, paperParams, placeParams, readSaved, sittingParams } from './forms.js';
import { coverPage, papersPage } from './list-page.js';
import { resultPage, reviewPage } from './result-page.js';
import type { OwnPapersService } from './own-papers-service.js';
import { handInPage, sittingPage } from './sitting-page.js';
import type { SittingsService } from './sitting-service.js';

/** A candidate's papers. Every address here is one's own: another's sitting answers as one that does not exist. */

const config = { access: 'sit-papers' as const };

export function sittingRoutes(app: FastifyInstance, own: OwnPapersService, sittings: SittingsService): void {
  making(app, own, sittings);
  sitting(app, sittings);
  saving(app, sittings);
  afterwards(app, sittings);
}

function making(app: FastifyInstance, own: OwnPapersService, sittings: SittingsService): void {
  app.get('/papers', { config }, async (request, reply) => {
    const person = request.who();
    return reply.page(papersPage(await own.overview(person), person, reply.formToken(), randomUUID()), {
      title: 'Papers',
      layout: 'two',
    });
  });

  app.post('/papers', { config }, async (request, reply) => {
    const form = ownPaperForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    const { sitting: id, paper, extra } = form.data;
    await own.makeOwn(request.who(), { sitting: id, paper, extraTime: extra });
    return reply.redirect(`/papers/sittings/${id}`, 303);
  });

  app.post('/papers/:paper/sit', { config }, async (request, reply) => {
    const { paper } = known(paperParams.safeParse(request.params));
    return reply.redirect(`/papers/sittings/${await sittings.takeUp(request.who(), paper)}`, 303);
  });
}

function sitting(app: FastifyInstance, sittings: SittingsService): void {
  app.get('/papers/sittings/:sitting', { config }, async (request, reply) => {
    const { sitting: id } = known(sittingParams.safeParse(request.params));
    const person = request.who();
    const { sitting: found, state } = await sittings.head(person, id);
    if (state !== 'waiting') return reply.redirect(state === 'running' ? `/papers/sittings/${id}/1` : `/papers/sittings/${id}/result`, 303);
    return reply.page(coverPage(found, person, reply.formToken()), { title: found.title });
  });

  app.post('/papers/sittings/:sitting/begin', { config }, async (request, reply) => {
    const { sitting: id } = known(sittingParams.safeParse(request.params));
    const form = beginForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    await sittings.begin(request.who(), id);
    return reply.redirect(`/papers/sittings/${id}/${form.data.pages === 'all' ? 'all' : '1'}`, 303);
  });

  app.get('/papers/sittings/:sitting/all', { config }, async (request, reply) => {
    const { sitting: id } = known(sittingParams.safeParse(request.params));
    return await showSitting(request, reply, id, null);
  });

  app.get('/papers/sittings/:sitting/:place', { config }, async (request, reply) => {
    const { sitting: id, place } = known(placeParams.safeParse(request.params));
    return await showSitting(request, reply, id, place);
  });

  async function showSitting(request: FastifyRequest, reply: FastifyReply, id: string, place: number | null): Promise<FastifyReply> {
    const person = request.who();
    const view = await sittings.view(person, id);
    if (view.state !== 'running') return reply.redirect(`/papers/sittings/${id}`, 303);
    if (place !== null && place > view.items.length) throw new RungwiseError('not-found');
    const page = sittingPage(view, person, reply.formToken(), place);
    return reply.page(page, { title: `${page.data.place}, ${page.data.title}`, layout: 'two', scripts: ['answer-sheet'] });
  }
}

function saving(app: FastifyInstance, sittings: SittingsService): void {
  app.post('/papers/sittings/:sitting/save', { config }, async (request, reply) => {
    const { sitting: id } = known(sittingParams.safeParse(request.params));
    const { changed, go } = readSaved(request.body);
    const done = await sittings.save(request.who(), id, changed);
    const late = `/papers/sittings/${id}/result?late=${changed.length > 0 ? '1' : '0'}`;
    // Our script asks for words and stays on its page; a form moves on.
    if (request.headers.accept === 'application/json')
      return done === 'saved' ? reply.send({ saved: true }) : reply.code(409).send({ saved: false, href: late });
    if (done === 'late') return reply.redirect(late, 303);
    const to = /^([1-9]\d{0,2}|all|hand-in)$/.test(go) ? go : '1';
    return reply.redirect(`/papers/sittings/${id}/${to}`, 303);
  });

  app.get('/papers/sittings/:sitting/hand-in', { config }, async (request, reply) => {
    const { sitting: id } = known(sittingParams.safeParse(request.params));
    const person = request.who();
    const view = await sittings.view(person, id);
    if (view.state !== 'running') return reply.redirect(`/papers/sittings/${id}`, 303);
    return reply.page(handInPage(view, person, reply.formToken()), { title: 'Hand in', scripts: ['answer-sheet'] });
  });

  app.post('/papers/sittings/:sitting/hand-in', { config }, async (request, reply) => {
    const { sitting: id } = known(sittingParams.safeParse(request.params));
    await sittings.handIn(request.who(), id);
    return reply.redirect(`/papers/sittings/${id}/result`, 303);
  });
}

function afterwards(app: FastifyInstance, sittings: SittingsService): void {
  app.get('/papers/sittings/:sitting/result', { config }, async (request, reply) => {
    const { sitting: id } = known(sittingParams.safeParse(request.params));
    const person = request.who();
    const view = await sittings.result(person, id);
    if (view === null) return reply.redirect(`/papers/sittings/${id}`, 303);
    const late = (request.query as { late?: unknown }).late === '1';
    const page = resultPage(view, person, { csrf: reply.formToken(), round: randomUUID }, late);
    return reply.page(page, { title: page.data.verdict.word, layout: 'two' });
  });

  app.get('/papers/sittings/:sitting/review/:place', { config }, async (request, reply) => {
    const { sitting: id, place } = known(placeParams.safeParse(request.params));
    const person = request.who();
    const view = await sittings.result(person, id);
    if (view === null) return reply.redirect(`/papers/sittings/${id}`, 303);
    const page = reviewPage(view, { csrf: reply.formToken(), round: randomUUID }, place);
    if (page === null) throw new RungwiseError('not-found');
    return reply.page(page, { title: `${page.data.place}: ${page.data.verdict.word}`, layout: 'two' });
  });
}
