import type { FastifyInstance, FastifyRequest } from 'fastify';
import { RungwiseError } from '../core/errors.js';
import type { FieldPart } from '../core/page-parts.js';
import { calendarParams, planForm, readWeekdays } from './forms.js';
import { planPage, typedOf, type PlanTyped } from './page.js';
import type { PlanService } from './service.js';

/** The plan and its calendar. */
export function planRoutes(plan: PlanService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    const config = { access: 'study' as const };

    app.get('/plan', { config }, async (request, reply) => {
      const person = request.who();
      const view = await plan.view(person);
      const saved = (request.query as { saved?: string } | undefined)?.saved === 'yes';
      return reply.page(planPage(view, person, reply.formToken(), typedOf(view), saved), { title: 'Plan', layout: 'two' });
    });

    app.post('/plan', { config }, async (request, reply) => {
      const person = request.who();
      const form = planForm.safeParse(request.body);
      const weekdaysOff = readWeekdays(request.body);
      const faults: Partial<Record<string, string>> = {};
      if (form.success) {
        const { exam: examDay, minutes, daysOff, paper } = form.data;
        Object.assign(faults, await plan.save(person, { examDay, minutes, daysOff, weekdaysOff, paper }));
        if (Object.keys(faults).length === 0) return reply.redirect('/plan?saved=yes', 303);
      } else for (const { path, message } of form.error.issues) faults[String(path[0])] ??= message;
      reply.code(422);
      const page = planPage(await plan.view(person), person, reply.formToken(), typedBack(request, faults, weekdaysOff), false);
      return reply.page(page, { title: 'Not saved yet', layout: 'two' });
    });

    app.post('/plan/calendar', { config }, async (request, reply) => {
      await plan.newCalendar(request.who());
      return reply.redirect('/plan?saved=yes#calendar', 303);
    });

    app.get('/plan/calendar/:calendar', { config: { access: 'come-in' as const } }, async (request, reply) => {
      const params = calendarParams.safeParse(request.params);
      if (!params.success) throw new RungwiseError('not-found');
      const text = await plan.calendar(params.data.calendar);
      return reply.headers({ 'content-type': 'text/calendar; charset=utf-8', 'cache-control': 'private, max-age=3600' }).send(text);
    });
  };
}

/** What was typed, with what is wrong beside it. */
function typedBack({ body }: FastifyRequest, faults: Partial<Record<string, string>>, weekdaysOff: number[]): PlanTyped {
  const given = (body ?? {}) as Record<string, unknown>;
  const back = (name: string): FieldPart => ({ value: typeof given[name] === 'string' ? given[name] : '', why: faults[name] ?? null });
  const paper = typeof given['paper'] === 'string' ? given['paper'] : null;
  return { exam: back('exam'), minutes: back('minutes'), daysOff: back('daysOff'), weekdaysOff, paper };
}
