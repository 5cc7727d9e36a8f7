import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { readHands } from '../core/evenings/hands.js';
import { known, RungwiseError } from '../core/errors.js';
import type { FieldPart } from '../core/page-parts.js';
import type { HandsTyped } from './control-lists.js';
import { controlPage } from './control-page.js';
import * as forms from './forms.js';
import { listPage, proposed, type EveningTyped } from './list-page.js';
import { seenText } from './live.js';
import { screenPage } from './screen-page.js';
import type { EveningsService } from './service.js';

/** A tutor's evenings. Those of other tutors' classes answer as ones that do not exist. */

export interface HoldingNeeds {
  evenings: EveningsService;
  /** Where people reach the server; null: wherever they asked. */
  origin: string | null;
}

const config = { access: 'hold-evenings' as const };
const wide = { layout: 'wide' as const, styles: ['class.css'] };

export function holdingRoutes(app: FastifyInstance, needs: HoldingNeeds): void {
  list(app, needs.evenings);
  held(app, needs);
  taking(app, needs);
}

function list(app: FastifyInstance, { making }: EveningsService): void {
  app.get('/classes/:class/evenings', { config }, async (request, reply) => {
    const person = request.who();
    const { class: classId } = known(forms.classParams.safeParse(request.params));
    const view = await making.overview(person, classId, forms.askedQuery.parse(request.query).questions);
    return reply.page(listPage(view, person, reply.formToken(), randomUUID(), proposed(view)), { title: 'Class evenings', ...wide });
  });

  app.post('/classes/:class/evenings', { config }, async (request, reply) => {
    const person = request.who();
    const { class: classId } = known(forms.classParams.safeParse(request.params));
    const form = forms.eveningForm.safeParse(request.body);
    const topics = forms.tickedTopics(request.body);
    const faults: Record<string, string> = {};
    if (form.success) {
      const { id: eveningId, ...wish } = form.data;
      Object.assign(faults, await making.make(person, classId, { eveningId, topics, ...wish }));
      if (Object.keys(faults).length === 0) return reply.redirect(`/classes/${classId}/evenings/${eveningId}`, 303);
    } else for (const { path, message } of form.error.issues) faults[String(path[0])] ??= message;
    const view = await making.overview(person, classId, []);
    // What only a changed page sends has no words beside a field.
    if (!Object.keys(faults).some((name) => ['title', 'questions', 'count'].includes(name))) throw new RungwiseError('form-not-understood');
    reply.code(422);
    const page = listPage(view, person, reply.formToken(), randomUUID(), typedBack(request, faults, topics));
    return reply.page(page, { title: 'Not made yet', ...wide });
  });
}

/** What was typed, with what is wrong beside it. */
function typedBack({ body }: FastifyRequest, faults: Readonly<Record<string, string>>, topics: readonly string[]): EveningTyped {
  const given = (body ?? {}) as Record<string, unknown>;
  const text = (name: string): string => (typeof given[name] === 'string' ? given[name] : '');
  const back = (name: string): FieldPart => ({ value: text(name), why: faults[name] ?? null });
  return { title: back('title'), questions: back('questions'), count: back('count'), region: text('region'), topics };
}

type Held = { class: number; evening: string };
const heldOf = (request: FastifyRequest): Held => known(forms.heldParams.safeParse(request.params));

/** Where candidates go; null where this server was asked for by a name that means only this machine. */
function phonesAt(request: FastifyRequest, origin: string | null): string | null {
  if (origin === null && /^(localhost|127\.|\[::1\])/.test(request.host)) return null;
  return `${origin ?? `${request.protocol}://${request.host}`}/evening`;
}

function held(app: FastifyInstance, needs: HoldingNeeds): void {
  app.get('/classes/:class/evenings/:evening', { config }, async (request, reply) => {
    return await showControl(request, reply, needs, heldOf(request), null);
  });

  app.get('/classes/:class/evenings/:evening/screen', { config }, async (request, reply) => {
    const { class: classId, evening } = heldOf(request);
    const view = await needs.evenings.holding.view(request.who(), classId, evening);
    const page = screenPage(view, seenText(view.head.change, view.answered), phonesAt(request, needs.origin));
    return reply.page(page, { title: page.data.place, ...wide, scripts: ['evening'] });
  });
}

async function showControl(
  request: FastifyRequest,
  reply: FastifyReply,
  { evenings, origin }: HoldingNeeds,
  { class: classId, evening }: Held,
  typed: HandsTyped | null,
): Promise<FastifyReply> {
  const person = request.who();
  const view = await evenings.holding.view(person, classId, evening);
  const { said } = forms.saidQuery.parse(request.query ?? {});
  const more = { csrf: reply.formToken(), said: said ?? null, phones: phonesAt(request, origin), typed };
  const page = controlPage(view, person, seenText(view.head.change, view.answered), more);
  return reply.page(page, { title: page.data.headline, ...wide, scripts: ['evening', 'evening-hands'] });
}

function taking(app: FastifyInstance, needs: HoldingNeeds): void {
  const { holding } = needs.evenings;

  app.post('/classes/:class/evenings/:evening/step', { config }, async (request, reply) => {
    const person = request.who();
    const { class: classId, evening } = heldOf(request);
    const form = forms.stepForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    const { do: wanted, seen, was } = form.data;
    const typed = forms.typedHands(request.body);
    const read = readHands(typed);
    const inShort = request.headers.accept === 'application/json';
    if (!read.ok) {
      reply.code(422);
      if (inShort) return reply.send({ saved: false, words: read.why });
      return await showControl(request, reply, needs, { class: classId, evening }, { values: typed, why: read.why, index: read.index });
    }
    // Only what was changed on this page: one that is old in another window takes nothing back.
    const changed = typed.length > 0 && typed.map((text) => text.trim()).join(',') !== was;
    const written = changed ? await holding.setHands(person, classId, evening, seen, read.hands) : true;
    if (inShort)
      return reply.code(written ? 200 : 409).send({ saved: written, words: written ? 'Saved.' : 'Not saved: the evening has moved on.' });
    const why = wanted === 'hands' ? (written ? null : 'moved') : await holding.step(person, classId, evening, wanted, seen);
    return reply.redirect(`/classes/${classId}/evenings/${evening}${why === null ? '' : `?said=${why}`}#steps`, 303);
  });
}
