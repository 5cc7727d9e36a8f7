import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { keepPhrase, startForm, typed, whyOf } from '../accounts/index.js';
import { known } from '../core/errors.js';
import { readCode } from '../core/join-code.js';
import { regionSchema } from '../core/syllabus.js';
import { deadCode, joinFoundPage, joinPage, ownClassesPage, type StartTyped } from './joining-page.js';
import type { JoinPage } from './joining-page-types.js';
import type { JoiningService } from './joining-service.js';
import { classParams } from './people-forms.js';

/** Joining a class, one's own classes, leaving. A code stands in no title, no log and no address that leads away from here. */

export interface MemberRoutesNeeds {
  joining: JoiningService;
  origin: string | null;
}

const open = { config: { access: 'come-in' as const } };
const mine = { config: { access: 'be-in-classes' as const } };

export function memberRoutes(needs: MemberRoutesNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    byCode(app, needs);
    joining(app, needs);
    ownClasses(app, needs);
  };
}

/** What was written about oneself beside a code, kept while the code is looked at again. */
function keptOf(body: unknown): JoinPage['data']['kept'] {
  const name = typed(body, 'name');
  const region = regionSchema.safeParse(typed(body, 'region'));
  return name === '' || !region.success ? null : { name, region: region.data };
}

const startTyped = (kept: JoinPage['data']['kept']): StartTyped => ({
  startToken: randomUUID(),
  name: { value: kept?.name ?? '', why: null },
  region: kept?.region ?? 'uk',
});

/** The page that asks for a code, with what is wrong with the one that was given. */
function askAgain(request: FastifyRequest, reply: FastifyReply, status: 404 | 422, text: string, why: string): FastifyReply {
  reply.code(status);
  const page = joinPage(request.person, reply.formToken(), { value: text, why }, keptOf(request.body));
  return reply.page(page, { title: 'No class found', styles: ['class.css'] });
}

/** The class that a code opens, or the question for another code. */
async function showFound(
  request: FastifyRequest,
  reply: FastifyReply,
  { joining: service }: MemberRoutesNeeds,
  asked: { text: string; status: 404 | 422; typed: StartTyped; title?: string },
): Promise<FastifyReply> {
  const reading = readCode(asked.text);
  if (!reading.understood) return askAgain(request, reply, asked.status, asked.text, reading.message);
  const found = await service.look(reading.code, request.ip);
  if (found === null) return askAgain(request, reply, asked.status, asked.text, deadCode);
  const isIn = request.person !== null && (await service.isIn(request.person, found));
  const page = joinFoundPage(found, { person: request.person, isIn }, reply.formToken(), reading.code, asked.typed);
  return reply.page(page, { title: asked.title ?? 'Join a class', scripts: ['numeric-field'], styles: ['class.css'] });
}

function byCode(app: FastifyInstance, needs: MemberRoutesNeeds): void {
  app.get('/join', open, async (request, reply) =>
    reply.page(joinPage(request.person, reply.formToken()), { title: 'Join a class', styles: ['class.css'] }),
  );

  app.post('/join', open, (request, reply) =>
    showFound(request, reply, needs, { text: typed(request.body, 'code'), status: 422, typed: startTyped(keptOf(request.body)) }),
  );

  app.get<{ Params: { code: string } }>('/join/:code', open, (request, reply) =>
    showFound(request, reply, needs, { text: request.params.code, status: 404, typed: startTyped(null) }),
  );
}

function joining(app: FastifyInstance, needs: MemberRoutesNeeds): void {
  const { joining: service } = needs;

  app.post('/join/in', mine, async (request, reply) => {
    const text = typed(request.body, 'code');
    const reading = readCode(text);
    if (!reading.understood) return askAgain(request, reply, 422, text, reading.message);
    const result = await service.join(request.who(), reading.code, request.ip);
    return result === 'dead' ? askAgain(request, reply, 422, text, deadCode) : reply.redirect(`/my-classes?said=${result}`, 303);
  });

  app.post('/join/start', open, async (request, reply) => {
    // Somebody who is in already stays who they are.
    if (request.person !== null) return reply.redirect('/join', 303);
    const text = typed(request.body, 'code');
    const reading = readCode(text);
    if (!reading.understood) return askAgain(request, reply, 422, text, reading.message);
    const form = startForm.safeParse(request.body);
    if (!form.success) {
      reply.code(422);
      const name = { value: typed(request.body, 'name'), why: whyOf(form.error, 'name') ?? 'Please send the form again.' };
      const back = { ...startTyped(null), name, region: typed(request.body, 'region') };
      return showFound(request, reply, needs, { text, status: 422, typed: back, title: 'Not sent yet' });
    }
    const started = await service.start(form.data, reading.code, request.ip);
    if (started === 'dead') return askAgain(request, reply, 422, text, deadCode);
    // The same form sent twice: the answer to the first carries the phrase.
    if (started === null) return reply.redirect('/', 303);
    return keepPhrase(reply.signIn(started.cookie), needs, started.phrase).redirect('/phrase?first=yes', 303);
  });
}

function ownClasses(app: FastifyInstance, { joining: service }: MemberRoutesNeeds): void {
  app.get('/my-classes', mine, async (request, reply) => {
    const person = request.who();
    const { said } = request.query as { said?: unknown };
    const page = ownClassesPage(await service.own(person), person, reply.formToken(), said);
    return reply.page(page, { title: 'Your classes', styles: ['class.css'] });
  });

  app.post('/my-classes/:class/leave', mine, async (request, reply) => {
    await service.leave(request.who(), known(classParams.safeParse(request.params)).class);
    return reply.redirect('/my-classes?said=left', 303);
  });
}
