import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { originOf, typed } from '../accounts/index.js';
import type { FieldPart } from '../core/page-parts.js';
import type { ClassTyped } from './people-fields.js';
import { addForm, classForm, codeForm, endForm, newClassForm, tutorForm } from './people-forms.js';
import { newClassPage, peoplePage, type PeopleTyped } from './people-page.js';
import { saidPart } from './people-words.js';
import { chosen, classOf, config, done, faultsOf, shown, type PeopleRoutesNeeds } from './shared-routes.js';
import { keepSlips, slipRoutes, slipsPath } from './slip-routes.js';

/** A class and its people. Classes of other tutors answer as ones that do not exist. Everything can be pressed twice. */

export function peopleRoutes(needs: PeopleRoutesNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    making(app, needs);
    theClass(app, needs);
    tutorsAndCode(app, needs);
    candidates(app, needs);
    slipRoutes(app, needs);
  };
}

function classTyped(body: unknown, faults: Readonly<Record<string, string>>): ClassTyped {
  const back = (name: string): FieldPart => ({ value: typed(body, name), why: faults[name] ?? null });
  return { name: back('name'), exam: back('exam'), paper: back('paper'), meetsOn: back('meetsOn'), meetsAt: back('meetsAt') };
}

const wishOf = ({ name, exam, paper, meetsOn, meetsAt }: ReturnType<typeof classForm.parse>) => ({
  name,
  examOn: exam,
  paper,
  meetsOn,
  meetsAt,
});

function making(app: FastifyInstance, { people }: PeopleRoutesNeeds): void {
  // The list of classes is a tutor's first page.
  app.get('/classes', { config }, async (_request, reply) => reply.redirect('/', 303));

  app.get('/classes/new', { config }, async (request, reply) => {
    const person = request.who();
    const { papers } = await people.forNew(person);
    return reply.page(newClassPage(papers, person, reply.formToken(), randomUUID()), { title: 'A new class', ...shown, layout: 'one' });
  });

  app.post('/classes', { config }, async (request, reply) => {
    const person = request.who();
    const { startToken } = chosen(newClassForm.safeParse(request.body));
    const form = classForm.safeParse(request.body);
    const made = form.success ? await people.make(person, wishOf(form.data), startToken) : { faults: faultsOf(form.error) };
    if ('classId' in made) return reply.redirect(`/classes/${made.classId}/people?said=made`, 303);
    reply.code(422);
    const { papers } = await people.forNew(person);
    const page = newClassPage(papers, person, reply.formToken(), startToken, classTyped(request.body, made.faults));
    return reply.page(page, { title: 'Not made yet', ...shown, layout: 'one' });
  });
}

/** The page itself, as it is or with a form that came back. */
async function showPeople(
  request: FastifyRequest,
  reply: FastifyReply,
  needs: PeopleRoutesNeeds,
  back: PeopleTyped = {},
): Promise<FastifyReply> {
  const person = request.who();
  const view = await needs.people.view(person, classOf(request));
  const said = saidPart((request.query as { said?: unknown }).said);
  const frame = { csrf: reply.formToken(), addToken: randomUUID(), origin: originOf(needs, request), said };
  const title = Object.keys(back).length > 0 ? 'Not saved yet' : `${view.head.name}: people`;
  return reply.page(peoplePage(view, person, frame, back), { title, ...shown });
}

function theClass(app: FastifyInstance, needs: PeopleRoutesNeeds): void {
  const { people } = needs;
  app.get('/classes/:class/people', { config }, (request, reply) => showPeople(request, reply, needs));

  app.post('/classes/:class/people/class', { config }, async (request, reply) => {
    const form = classForm.safeParse(request.body);
    const faults = form.success ? await people.save(request.who(), classOf(request), wishOf(form.data)) : faultsOf(form.error);
    if (Object.keys(faults).length === 0) return done(request, reply, 'saved');
    reply.code(422);
    return showPeople(request, reply, needs, { fields: classTyped(request.body, { ...faults }) });
  });

  app.post('/classes/:class/people/end', { config }, async (request, reply) => {
    const { what } = chosen(endForm.safeParse(request.body));
    await (what === 'end' ? people.end : people.takeUp)(request.who(), classOf(request));
    return done(request, reply, what === 'end' ? 'ended' : 'again');
  });
}

function tutorsAndCode(app: FastifyInstance, { people }: PeopleRoutesNeeds): void {
  app.post('/classes/:class/people/tutors', { config }, async (request, reply) => {
    await people.addTutor(request.who(), classOf(request), chosen(tutorForm.safeParse(request.body)).tutor);
    return done(request, reply, 'tutor');
  });

  app.post('/classes/:class/people/tutors/remove', { config }, async (request, reply) => {
    const [person, { tutor }] = [request.who(), chosen(tutorForm.safeParse(request.body))];
    const removed = await people.removeTutor(person, classOf(request), tutor);
    // Whoever goes no longer sees the class; an administrator does.
    if (removed === 'removed' && tutor === person.id && person.role === 'tutor') return reply.redirect('/', 303);
    return done(request, reply, removed === 'last' ? 'last-tutor' : 'tutor-removed');
  });

  app.post('/classes/:class/people/code', { config }, async (request, reply) => {
    const [person, { what, days }] = [request.who(), chosen(codeForm.safeParse(request.body))];
    if (what === 'new') await people.newCode(person, classOf(request), days);
    else if (what === 'keep') await people.keepCode(person, classOf(request), days);
    else await people.closeCode(person, classOf(request));
    return done(request, reply, { new: 'code', keep: 'kept', close: 'closed' }[what]);
  });
}

function candidates(app: FastifyInstance, needs: PeopleRoutesNeeds): void {
  app.post('/classes/:class/people/add', { config }, async (request, reply) => {
    const form = addForm.safeParse(request.body);
    const added = form.success
      ? await needs.members.add(request.who(), classOf(request), form.data)
      : { why: faultsOf(form.error)['names'] ?? '' };
    // Sent twice: the slips of the first time stand in the browser, unless they got lost on the way.
    if (added === 'sent') return reply.redirect(slipsPath(request), 303);
    if (!('why' in added)) return keepSlips(request, reply, needs.origin, added);
    reply.code(422);
    const names = { value: longTyped(request.body), why: added.why };
    return showPeople(request, reply, needs, { add: { names, region: typed(request.body, 'region') } });
  });
}

/** What was typed as names, as far as a page can hold it. */
function longTyped(body: unknown): string {
  const { names } = (body ?? {}) as { names?: unknown };
  return typeof names === 'string' ? names.slice(0, 4000) : '';
}
