import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { known, RungwiseError } from '../core/errors.js';
import { dataPage, wholePage } from './data-page.js';
import { keepingForm, peopleQuery, personParams, sureForm, wholeQuery } from './forms.js';
import type { HeldService } from './held-service.js';
import { keepingPage } from './keeping-page.js';
import { privacyPage, removedPage } from './privacy-page.js';
import { ownRemovePage, peoplePage, removePage } from './removal-page.js';
import type { RemovalService } from './removal-service.js';
import type { RetentionService } from './retention-service.js';

/** What is held about people: seeing it, taking it away, removing it; how long it is kept; and all of that in plain words. */

export interface PersonalDataNeeds {
  held: HeldService;
  removal: RemovalService;
  retention: RetentionService;
}

export function personalDataRoutes(needs: PersonalDataNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    plainWords(app, needs);
    ownData(app, needs);
    removingOneself(app, needs);
    removingPeople(app, needs);
    keeping(app, needs);
  };
}

function plainWords(app: FastifyInstance, { held }: PersonalDataNeeds): void {
  const config = { access: 'come-in' as const };
  app.get('/privacy', { config }, async (_request, reply) => reply.page(privacyPage(await held.rules()), { title: 'What is kept here' }));
  app.get('/removed', { config }, async (_request, reply) => reply.page(removedPage(), { title: 'Removed' }));
}

function ownData(app: FastifyInstance, { held }: PersonalDataNeeds): void {
  const config = { access: 'own-data' as const };

  app.get('/me/data', { config }, async (request, reply) => {
    const person = request.who();
    return reply.page(dataPage(await held.view(person), person), { title: 'What is held about you' });
  });

  app.get('/me/data/all', { config }, async (request, reply) => {
    const person = request.who();
    const { part } = wholeQuery.parse(request.query ?? {});
    return reply.page(wholePage(await held.whole(person, part), person), { title: 'All that is held about you' });
  });

  app.get('/me/data.json', { config }, async (request, reply) =>
    reply
      .headers({
        'content-type': 'application/json; charset=utf-8',
        'content-disposition': 'attachment; filename="rungwise-my-data.json"',
        'cache-control': 'no-store',
      })
      .send(Readable.from(held.json(request.who()))),
  );
}

const isSure = ({ body }: FastifyRequest): boolean => sureForm.safeParse(body).success;

function removingOneself(app: FastifyInstance, { removal }: PersonalDataNeeds): void {
  const config = { access: 'remove-oneself' as const };
  const show = (request: FastifyRequest, reply: FastifyReply, refused: boolean): FastifyReply =>
    reply.page(ownRemovePage(request.who(), reply.formToken(), refused), { title: refused ? 'Not removed yet' : 'Remove me' });

  app.get('/me/remove', { config }, async (request, reply) => show(request, reply, false));

  app.post('/me/remove', { config }, async (request, reply) => {
    if (!isSure(request)) return show(request, reply.code(422), true);
    await removal.removeOneself(request.who());
    // What this browser keeps of an unfinished paper goes as well.
    return reply.signOut().header('clear-site-data', '"cache", "storage"').redirect('/removed', 303);
  });
}

function removingPeople(app: FastifyInstance, { removal }: PersonalDataNeeds): void {
  const config = { access: 'remove-people' as const };
  const personOf = ({ params }: FastifyRequest): number => known(personParams.safeParse(params)).person;

  async function show(request: FastifyRequest, reply: FastifyReply, refused: boolean): Promise<FastifyReply> {
    const who = request.who();
    const page = removePage(await removal.look(who, personOf(request)), who, reply.formToken(), refused);
    return reply.page(page, { title: refused ? 'Not removed yet' : page.data.heading });
  }

  app.get('/people', { config }, async (request, reply) => {
    const person = request.who();
    const { text, said } = peopleQuery.parse(request.query ?? {});
    return reply.page(peoplePage(await removal.find(person, text), person, text, said === 'removed'), { title: 'People' });
  });

  // Once the password was typed a short while ago: somebody else may be sitting there.
  const fresh = { ...config, fresh: true };
  app.get('/people/:person/remove', { config: fresh }, (request, reply) => show(request, reply, false));

  app.post('/people/:person/remove', { config: fresh }, async (request, reply) => {
    if (!isSure(request)) return show(request, reply.code(422), true);
    await removal.removeOther(request.who(), personOf(request));
    return reply.redirect('/people?said=removed', 303);
  });
}

function keeping(app: FastifyInstance, { retention }: PersonalDataNeeds): void {
  const config = { access: 'upkeep' as const };

  app.get('/upkeep/keeping', { config }, async (request, reply) => {
    const person = request.who();
    const page = keepingPage(await retention.view(person), person, reply.formToken(), (request.query as { said?: unknown }).said);
    return reply.page(page, { title: 'What is kept, and how long' });
  });

  app.post('/upkeep/keeping', { config }, async (request, reply) => {
    const form = keepingForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    request.about = { months: form.data.months };
    await retention.save(request.who(), form.data);
    return reply.redirect('/upkeep/keeping?said=saved', 303);
  });

  app.post('/upkeep/keeping/:person', { config }, async (request, reply) => {
    await retention.keep(request.who(), known(personParams.safeParse(request.params)).person);
    return reply.redirect('/upkeep/keeping?said=kept', 303);
  });
}
