import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { rowNumber } from '../core/address-number.js';
import { known } from '../core/errors.js';
import { cellPage } from './cell-page.js';
import { clubPage } from './club-page.js';
import { gridPage } from './grid-page.js';
import { planPage } from './plan-page.js';
import type { TeachingService } from './service.js';

/** How classes stand, and what to do about it. Those of other tutors answer as ones that do not exist. */

const classParams = z.object({ class: rowNumber });
const cellParams = z.object({ class: rowNumber, member: rowNumber, topic: z.string().regex(/^[A-Z]{2}$/) });
const wishOf = z.object({
  on: z.enum(['today', 'exam']).catch('today'),
  order: z
    .string()
    .regex(/^(need|name|seen|[A-Z]{2})$/)
    .catch('need'),
  of: z.enum(['all', 'asked']).catch('all'),
});

export function teachingRoutes(teaching: TeachingService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    const config = { access: 'see-classes' as const };
    const wide = { layout: 'wide' as const, styles: ['class.css'] };

    app.get('/classes/:class', { config }, async (request, reply) => {
      const person = request.who();
      const { class: classId } = known(classParams.safeParse(request.params));
      const wish = wishOf.parse(request.query);
      const page = gridPage(await teaching.stand(person, classId, wish.on), wish, person);
      return reply.page(page, { title: `${page.data.name}: who needs help`, ...wide });
    });

    app.get('/classes/:class/plan', { config }, async (request, reply) => {
      const person = request.who();
      const page = planPage(await teaching.plan(person, known(classParams.safeParse(request.params)).class), person);
      return reply.page(page, { title: `${page.data.name}: ${page.data.heading.toLowerCase()}`, ...wide });
    });

    app.get('/classes/:class/members/:member/topics/:topic', { config }, async (request, reply) => {
      const person = request.who();
      const { class: classId, member, topic } = known(cellParams.safeParse(request.params));
      const page = cellPage(await teaching.cell(person, classId, member, topic), person);
      return reply.page(page, { title: page.data.heading, styles: ['class.css'] });
    });

    app.get('/club', { config }, async (request, reply) => {
      const person = request.who();
      return reply.page(clubPage(await teaching.club(person), person), { title: 'All classes', ...wide });
    });
  };
}
