import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { dayNumber, dayWords } from '../core/calendar.js';
import { readPhrase } from '../core/return-phrase.js';
import { accountForm, returnForm, sessionForm, startForm } from './forms.js';
import { linkRoutes } from './link-routes.js';
import { mePage, phrasePage, returnPage, welcomePage } from './pages.js';
import { chosen, originOf, typed, whyOf, type AccountsRoutesNeeds } from './route-needs.js';
import { securityRoutes } from './security-routes.js';
import type { Person } from './sessions.js';
import { signInRoutes } from './sign-in-routes.js';
import { staffRoutes } from './staff-routes.js';

/** Coming in, coming back, and one's own account. */
export function accountsRoutes(needs: AccountsRoutesNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    comeIn(app, needs);
    phraseOnce(app, needs);
    ownAccount(app, needs);
    ownSessions(app, needs);
    await app.register(signInRoutes(needs));
    await app.register(linkRoutes(needs));
    await app.register(securityRoutes(needs));
    await app.register(staffRoutes(needs));
  };
}

function comeIn(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const config = { access: 'come-in' as const };
  const { accounts } = needs;

  app.post('/start', { config }, async (request, reply) => {
    // Somebody who is in already stays who they are: a second start would leave the first without a browser.
    if (request.person !== null) return reply.redirect('/', 303);
    const form = startForm.safeParse(request.body);
    if (!form.success) {
      reply.code(422);
      const name = { value: typed(request.body, 'name'), why: whyOf(form.error, 'name') ?? 'Please send the form again.' };
      return reply.page(welcomePage(await needs.bank(), reply.formToken(), randomUUID(), name, typed(request.body, 'region')), {
        title: 'Not sent yet',
        layout: 'two',
        scripts: ['numeric-field'],
      });
    }
    const started = await accounts.start(form.data, request.ip);
    // The same form sent twice: the person was made by the first, whose answer carries the phrase. Had that answer been lost, one starts anew.
    if (started === null) return reply.redirect('/', 303);
    request.log.info({ person: started.personId }, 'came in');
    return keepPhrase(reply.signIn(started.cookie), needs, started.phrase).redirect('/phrase?first=yes', 303);
  });

  app.get('/return', { config }, async (_request, reply) => reply.page(returnPage(reply.formToken()), { title: 'Come back' }));

  app.post('/return', { config }, async (request, reply) => {
    const form = returnForm.safeParse(request.body);
    const shared = typed(request.body, 'shared') === 'yes';
    const result = form.success
      ? await accounts.comeBack(form.data.phrase, shared, request.ip)
      : { why: whyOf(form.error, 'phrase') ?? 'Type the seven words.' };
    if ('cookie' in result) {
      if (request.person !== null) await accounts.signOut(request.person);
      request.log.info({ person: result.personId }, 'came back');
      return reply.signIn(result.cookie, shared).redirect('/', 303);
    }
    request.log.info('coming back refused');
    reply.code(422);
    const phrase = { value: typed(request.body, 'phrase'), why: result.why };
    return reply.page(returnPage(reply.formToken(), phrase, shared), { title: 'Not found yet' });
  });
}

const phraseCookie = 'rungwise-phrase';
const phraseMinutes = 15;

/**
 * The browser itself keeps a new phrase until its owner says it is written down, at most a quarter of an hour, so that a
 * reload or a dropped tab does not lose it. The server keeps only the hash.
 */
export function keepPhrase(reply: FastifyReply, { origin }: Pick<AccountsRoutesNeeds, 'origin'>, words: string[]): FastifyReply {
  const secure = origin?.startsWith('https:') === true;
  return reply.setCookie(phraseCookie, words.join('-'), {
    path: '/phrase',
    httpOnly: true,
    sameSite: 'strict',
    secure,
    maxAge: phraseMinutes * 60,
  });
}

function phraseOnce(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const config = { access: 'study' as const };

  app.get<{ Querystring: { first?: string } }>('/phrase', { config }, async (request, reply) => {
    const person = request.who();
    const kept = readPhrase(request.cookies[phraseCookie] ?? '');
    if (!kept.understood) return reply.redirect('/me', 303);
    const today = dayWords(dayNumber(needs.clock.now().getTime(), person.timeZone));
    const page = phrasePage(person, kept.words, request.query.first === 'yes', originOf(needs, request), today);
    return reply.page(page, { title: 'Your return phrase' });
  });

  app.get('/phrase/kept', { config }, async (_request, reply) => reply.clearCookie(phraseCookie, { path: '/phrase' }).redirect('/', 303));
}

function ownAccount(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const config = { access: 'keep-own-account' as const };
  const { accounts } = needs;
  const view = async (person: Person) => ({
    sessions: await accounts.sessionsOf(person),
    inClasses: person.role === 'candidate' && (await needs.inClasses(person)),
    slip: await accounts.slipOf(person),
  });

  app.get<{ Querystring: { saved?: string } }>('/me', { config }, async (request, reply) => {
    const person = request.who();
    const page = mePage(person, await view(person), reply.formToken(), request.query.saved === 'yes');
    return reply.page(page, { title: 'You', layout: 'two' });
  });

  app.post('/me', { config }, async (request, reply) => {
    const person = request.who();
    const form = accountForm.safeParse(request.body);
    if (form.success) {
      await accounts.update(person, form.data);
      return reply.redirect('/me?saved=yes', 303);
    }
    reply.code(422);
    const field = (name: string) => ({ value: typed(request.body, name), why: whyOf(form.error, name) });
    const page = mePage(person, await view(person), reply.formToken(), false, field('name'), field('timeZone'));
    return reply.page(page, { title: 'Not saved yet', layout: 'two' });
  });

  app.post('/me/phrase', { config: { access: 'study' } }, async (request, reply) =>
    keepPhrase(reply, needs, await accounts.newPhrase(request.who())).redirect('/phrase', 303),
  );
}

function ownSessions(app: FastifyInstance, { accounts }: AccountsRoutesNeeds): void {
  const config = { access: 'keep-own-account' as const };
  const leaving = { ...config, beforeCodes: true };

  app.post('/me/sign-out', { config: leaving }, async (request, reply) => {
    const person = request.who();
    await accounts.signOut(person);
    request.log.info({ person: person.id }, 'signed out');
    return reply.signOut().redirect('/', 303);
  });

  app.post('/me/sign-out-everywhere', { config: leaving }, async (request, reply) => {
    const person = request.who();
    await accounts.signOutEverywhere(person);
    request.log.info({ person: person.id }, 'signed out everywhere');
    return reply.signOut().redirect('/', 303);
  });

  app.post('/me/sessions/end', { config }, async (request, reply) => {
    const { session } = chosen(sessionForm.safeParse(request.body));
    await accounts.endOwnSession(request.who(), session);
    return reply.redirect('/me', 303);
  });

  app.post('/me/shared', { config }, async (request, reply) => {
    await accounts.share(request.who());
    // The cookie anew, without a date: it goes when the browser is closed.
    return reply.keepShared(request).redirect('/me', 303);
  });
}
