import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { originOf } from '../accounts/index.js';
import { moveForm, slipForm } from './people-forms.js';
import { chosen, classOf, config, done, personOf, shown, type PeopleRoutesNeeds } from './shared-routes.js';
import { readSlips, writeSlips, type SlipWords } from './slip-cookie.js';
import { joinSlipsPage, personPage, slipsPage } from './slip-page.js';

/** One candidate of a class, and slips on paper. */

const slipCookie = 'rungwise-slips';
const slipMinutes = 15;

/** The tutor's browser alone keeps new phrases, for the one page that prints them, until they are printed or a quarter of an hour is over. */
export function keepSlips(request: FastifyRequest, reply: FastifyReply, origin: string | null, slips: readonly SlipWords[]): FastifyReply {
  const path = slipsPath(request);
  return reply
    .setCookie(slipCookie, writeSlips(slips), {
      path,
      httpOnly: true,
      sameSite: 'strict',
      secure: origin?.startsWith('https:') === true,
      maxAge: slipMinutes * 60,
    })
    .redirect(path, 303);
}

export const slipsPath = (request: FastifyRequest): string => `/classes/${classOf(request)}/people/slips`;

export function slipRoutes(app: FastifyInstance, needs: PeopleRoutesNeeds): void {
  printed(app, needs);
  oneCandidate(app, needs);
}

function printed(app: FastifyInstance, needs: PeopleRoutesNeeds): void {
  const sheet = { ...shown, layout: 'one' as const, scripts: ['print-page'] };

  app.get('/classes/:class/people/slips', { config }, async (request, reply) => {
    const person = request.who();
    const view = await needs.members.slips(person, classOf(request), readSlips(request.cookies[slipCookie] ?? ''));
    return reply.page(slipsPage(view, person, originOf(needs, request)), { title: 'Return slips', ...sheet });
  });

  app.get('/classes/:class/people/slips/kept', { config }, async (request, reply) => {
    const path = slipsPath(request);
    return reply.clearCookie(slipCookie, { path }).redirect(path.replace(/\/slips$/, ''), 303);
  });

  app.get('/classes/:class/people/join-slips', { config }, async (request, reply) => {
    const person = request.who();
    const view = await needs.people.view(person, classOf(request));
    const copies = Number((request.query as { copies?: unknown }).copies ?? 4);
    return reply.page(joinSlipsPage(view, copies, person, originOf(needs, request)), { title: 'Joining slips', ...sheet });
  });
}

function oneCandidate(app: FastifyInstance, { members, origin }: PeopleRoutesNeeds): void {
  app.get('/classes/:class/people/:person', { config }, async (request, reply) => {
    const [who, { class: classId, person }] = [request.who(), personOf(request)];
    const page = personPage(await members.member(who, classId, person), who, reply.formToken());
    return reply.page(page, { title: page.data.name, ...shown, layout: 'one' });
  });

  app.post('/classes/:class/people/:person/slip', { config }, async (request, reply) => {
    const { class: classId, person } = personOf(request);
    const { before } = chosen(slipForm.safeParse(request.body));
    const slip = await members.slip(request.who(), classId, person, before);
    // Sent twice: the slip of the first time stands in the browser, unless it got lost on the way.
    if (slip === null) return reply.redirect(slipsPath(request), 303);
    return keepSlips(request, reply, origin, [slip]);
  });

  app.post('/classes/:class/people/:person/move', { config }, async (request, reply) => {
    const { class: classId, person } = personOf(request);
    await members.move(request.who(), classId, person, chosen(moveForm.safeParse(request.body)).to);
    return done(request, reply, 'moved');
  });

  app.post('/classes/:class/people/:person/keep', { config }, async (request, reply) => {
    const { class: classId, person } = personOf(request);
    await members.keep(request.who(), classId, person);
    return done(request, reply, 'kept-longer');
  });

  app.post('/classes/:class/people/:person/remove', { config }, async (request, reply) => {
    const { class: classId, person } = personOf(request);
    await members.remove(request.who(), classId, person);
    return done(request, reply, 'removed');
  });
}
