import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { rowNumber } from '../core/address-number.js';
import { known } from '../core/errors.js';
import { classCsv } from './class-csv.js';
import { classReportPage } from './class-page.js';
import { ownReportPage } from './own-page.js';
import type { ReportsService } from './service.js';

/** Reports to print and tables to take away. */

const classParams = z.object({
  class: rowNumber,
});

export function reportsRoutes(reports: ReportsService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    const config = { access: 'see-classes' as const };

    app.get('/classes/:class/report', { config }, async (request, reply) => {
      const person = request.who();
      const page = classReportPage(await reports.ofClass(person, known(classParams.safeParse(request.params)).class), person);
      return reply.page(page, { title: `${page.data.name}: report`, layout: 'wide', styles: ['class.css'] });
    });

    app.get('/classes/:class/results.csv', { config }, async (request, reply) => {
      const report = await reports.ofClass(request.who(), known(classParams.safeParse(request.params)).class);
      return reply
        .headers({
          'content-type': 'text/csv; charset=utf-8; header=present',
          'content-disposition': 'attachment; filename="class.csv"',
          'cache-control': 'no-store',
        })
        .send(classCsv(report));
    });

    app.get('/report', { config: { access: 'study' as const } }, async (request, reply) => {
      const person = request.who();
      return reply.page(ownReportPage(await reports.own(person), person), { title: 'Your report' });
    });
  };
}
