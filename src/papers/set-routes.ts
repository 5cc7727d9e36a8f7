import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { known, RungwiseError } from '../core/errors.js';
import type { FieldPart } from '../core/page-parts.js';
import { calibrationPage, type CalibrationService } from './calibration.js';
import { classPaperPage } from './class-paper-page.js';
import { classReviewPage } from './class-review-page.js';
import { paperParams } from './forms.js';
import { extraForm, setForm } from './set-forms.js';
import { classPapersPage, proposed, type SetTyped } from './set-page.js';
import type { SettingService } from './set-service.js';

/** A tutor's papers. Those of other tutors' classes answer as ones that do not exist. */

const config = { access: 'set-papers' as const };

export function setRoutes(app: FastifyInstance, setting: SettingService, calibration: CalibrationService): void {
  list(app, setting);
  one(app, setting);
  review(app, setting);

  app.get('/class-papers/calibration', { config }, async (request, reply) => {
    const person = request.who();
    return reply.page(calibrationPage(await calibration.view(person), person), { title: 'Outlook and papers', layout: 'two' });
  });
}

function list(app: FastifyInstance, setting: SettingService): void {
  app.get('/class-papers', { config }, async (request, reply) => {
    const person = request.who();
    const view = await setting.overview(person);
    return reply.page(classPapersPage(view, person, reply.formToken(), randomUUID(), proposed(view, person)), {
      title: 'Papers',
      layout: 'two',
    });
  });

  app.post('/class-papers', { config }, async (request, reply) => {
    const person = request.who();
    const form = setForm(person.timeZone).safeParse(request.body);
    const faults: Record<string, string> = {};
    if (form.success) {
      const { id, class: classId, paper, title, region, versions, screen, opens, closes } = form.data;
      const window = screen === 'on' ? { opensAt: opens, closesAt: closes } : { opensAt: null, closesAt: null };
      const why = await setting.set(person, { paperId: id, classId, paper, title, region, versions, ...window });
      if (Object.keys(why).length === 0) return reply.redirect(`/class-papers/${id}`, 303);
      Object.assign(faults, why);
    } else for (const { path, message } of form.error.issues) faults[String(path[0])] ??= message;
    // What only a changed page sends has no words beside a field.
    if (!Object.keys(faults).some((name) => ['paper', 'title', 'versions', 'opens', 'closes'].includes(name)))
      throw new RungwiseError('form-not-understood');
    reply.code(422);
    const page = classPapersPage(await setting.overview(person), person, reply.formToken(), randomUUID(), typedBack(request, faults));
    return reply.page(page, { title: 'Not set yet', layout: 'two' });
  });
}

/** What was typed, with what is wrong beside it. */
function typedBack({ body }: FastifyRequest, faults: Readonly<Record<string, string>>): SetTyped {
  const given = (body ?? {}) as Record<string, unknown>;
  const text = (name: string): string => (typeof given[name] === 'string' ? given[name] : '');
  const back = (name: string): FieldPart => ({ value: text(name), why: faults[name] ?? null });
  return {
    class: text('class'),
    paper: text('paper'),
    region: text('region'),
    title: back('title'),
    versions: back('versions'),
    screen: text('screen') === 'on',
    opens: back('opens'),
    closes: back('closes'),
    paperWhy: faults['paper'] ?? null,
  };
}

function one(app: FastifyInstance, setting: SettingService): void {
  const idOf = (request: FastifyRequest): string => known(paperParams.safeParse(request.params)).paper;

  app.get('/class-papers/:paper', { config }, async (request, reply) => {
    const person = request.who();
    const view = await setting.view(person, idOf(request));
    const done = view.roll.some(({ sitting }) => sitting !== null && sitting.handedInAt !== null);
    const results = done
      ? { review: await setting.review(person, idOf(request)), marks: await setting.marks(person, idOf(request)) }
      : null;
    const page = classPaperPage(view, results, person, reply.formToken());
    return reply.page(page, { title: page.data.title });
  });

  app.post('/class-papers/:paper/close', { config }, async (request, reply) => {
    await setting.close(request.who(), idOf(request));
    return reply.redirect(`/class-papers/${idOf(request)}`, 303);
  });

  app.post('/class-papers/:paper/extra-time', { config }, async (request, reply) => {
    const form = extraForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    await setting.setExtraTime(request.who(), idOf(request), form.data.member, form.data.extra);
    return reply.redirect(`/class-papers/${idOf(request)}#roll`, 303);
  });
}

const reviewParams = z.object({
  paper: z.uuid(),
  place: z
    .string()
    .regex(/^[1-9]\d{0,2}$/)
    .transform(Number),
});

function review(app: FastifyInstance, setting: SettingService): void {
  app.get('/class-papers/:paper/review/:place', { config }, async (request, reply) => {
    const { paper, place } = known(reviewParams.safeParse(request.params));
    const shown = (request.query as { show?: unknown }).show === 'yes';
    const page = classReviewPage(await setting.review(request.who(), paper), place, shown);
    if (page === null) throw new RungwiseError('not-found');
    return reply.page(page, { title: page.data.place, layout: 'two' });
  });
}
