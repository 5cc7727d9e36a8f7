import type { FastifyInstance, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RungwiseError } from '../core/errors.js';
import { topicCodeSchema } from '../core/syllabus.js';
import type { FieldPart } from '../core/page-parts.js';
import { blueprintsPage, emptyBlueprint, type BlueprintTyped } from './blueprint-page.js';
import type { BlueprintsService } from './blueprint-service.js';

/** Make-ups of papers that tutors write. */

const config = { access: 'set-papers' as const };
const slug = z.string().regex(/^[a-z0-9-]{1,60}$/);

const whole = (least: number, most: number, what: string) =>
  z
    .string()
    .trim()
    .regex(/^\d{1,4}$/, `Write ${what} as a whole number.`)
    .transform(Number)
    .refine((value) => value >= least && value <= most, `Write ${what} as a number from ${least} to ${most}.`);

const form = z.object({
  pack: slug,
  title: z.string().trim().min(1, 'Give it a name, such as Forty minutes on plugs and fuses.').max(80, 'A name of 80 letters at most.'),
  minutes: whole(1, 600, 'the minutes'),
  passMark: whole(1, 200, 'the pass mark'),
});

/** Fields `share-AA`; an empty one asks nothing. @throws RungwiseError for a name that is no topic */
function readShares(body: Readonly<Record<string, unknown>>): {
  typed: Record<string, string>;
  shares: Record<string, number>;
  why: string | null;
} {
  const typed: Record<string, string> = {};
  for (const [name, value] of Object.entries(body)) {
    const topic = /^share-(.*)$/.exec(name)?.[1];
    if (topic === undefined) continue;
    if (!topicCodeSchema.safeParse(topic).success || typeof value !== 'string')
      throw new RungwiseError('form-not-understood', 'no such topic');
    if (value.trim() !== '') typed[topic] = value.trim().slice(0, 10);
  }
  const wrong = Object.entries(typed).find(([, value]) => !/^\d{1,3}$/.test(value));
  const shares = Object.fromEntries(Object.entries(typed).map(([topic, value]) => [topic, Number(value)]));
  return { typed, shares, why: wrong === undefined ? null : `“${wrong[1]}” for ${wrong[0]} is no number of questions.` };
}

export function blueprintRoutes(app: FastifyInstance, blueprints: BlueprintsService): void {
  app.get('/class-papers/blueprints', { config }, async (request, reply) => {
    const person = request.who();
    const wanted = slug.safeParse((request.query as { pack?: unknown }).pack);
    const view = await blueprints.view(person, wanted.success ? wanted.data : null);
    return reply.page(blueprintsPage(view, person, reply.formToken(), emptyBlueprint), { title: 'Kinds of paper', layout: 'two' });
  });

  app.post('/class-papers/blueprints', { config }, async (request, reply) => {
    const person = request.who();
    const { typed, pack, why } = await take(blueprints, request);
    if (why === null) return reply.redirect('/class-papers/blueprints', 303);
    reply.code(422);
    const page = blueprintsPage(await blueprints.view(person, pack), person, reply.formToken(), typed);
    return reply.page(page, { title: 'Not saved yet', layout: 'two' });
  });

  app.post('/class-papers/blueprints/retire', { config }, async (request, reply) => {
    const given = z
      .object({
        id: z
          .string()
          .regex(/^\d{1,9}$/)
          .transform(Number),
      })
      .safeParse(request.body);
    if (!given.success) throw new RungwiseError('form-not-understood');
    await blueprints.retire(request.who(), given.data.id);
    return reply.redirect('/class-papers/blueprints', 303);
  });
}

/** Keeps what can be kept; `why` says what is wrong, for the whole or for a field. */
async function take(
  blueprints: BlueprintsService,
  request: FastifyRequest,
): Promise<{ typed: BlueprintTyped; pack: string | null; why: string | null }> {
  const body = (request.body ?? {}) as Record<string, unknown>;
  const read = form.safeParse(body);
  const shares = readShares(body);
  const faults: Record<string, string> = {};
  if (!read.success) for (const { path, message } of read.error.issues) faults[String(path[0])] ??= message;
  let why = shares.why;
  if (read.success && why === null) {
    const { pack, title, minutes, passMark } = read.data;
    const questions = Object.values(shares.shares).reduce((sum, share) => sum + share, 0);
    if (questions === 0 || questions > 200)
      why = `A paper has 1 to 200 questions, and this would have ${questions}. Say how many of each topic.`;
    else if (passMark > questions) faults['passMark'] = `That is more than the ${questions} questions of the paper.`;
    else why = await blueprints.add(request.who(), pack, { title, minutes, passMark, questions, shares: shares.shares });
  }
  const back = (name: string): FieldPart => ({ value: typeof body[name] === 'string' ? body[name] : '', why: faults[name] ?? null });
  const typed = { title: back('title'), minutes: back('minutes'), passMark: back('passMark'), shares: shares.typed, why };
  return { typed, pack: typeof body['pack'] === 'string' ? body['pack'] : null, why: why ?? Object.values(faults)[0] ?? null };
}
