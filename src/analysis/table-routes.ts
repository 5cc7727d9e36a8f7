import type { FastifyInstance, FastifyRequest } from 'fastify';
import { readFileForm } from '../platform/file-form.js';
import { tableBodyLimit, tableFields, tableTyped } from './table-forms.js';
import { tableFiguresPage, tablePage } from './table-page.js';
import { mostTableBytes, type TableService } from './table-service.js';

/** Which question is bad, from a table that a tutor brings. */

const config = { access: 'analyse-questions' as const };

export function tableRoutes(tables: TableService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    // This scope alone takes files.
    app.addContentTypeParser(
      'multipart/form-data',
      { parseAs: 'buffer', bodyLimit: tableBodyLimit },
      async (request: FastifyRequest, body: Buffer) => readFileForm(body, request.headers['content-type'] ?? '', tableFields),
    );

    app.get('/analyse', { config }, async (request, reply) =>
      reply.page(tablePage(request.who(), reply.formToken(), { answers: '', key: '' }, []), { title: 'Analyse a table of answers' }),
    );

    app.post('/analyse', { config, bodyLimit: tableBodyLimit }, async (request, reply) => {
      const person = request.who();
      const typed = tableTyped(request.body);
      const read = tables.figures(person, { answers: typed.answers, key: typed.key.trim() === '' ? null : typed.key });
      if (!('faults' in read))
        return reply.page(tableFiguresPage(read, person), { title: 'Which question is bad', layout: 'wide', styles: ['class.css'] });
      reply.code(422);
      const back = { answers: withinLimit(typed.answers), key: withinLimit(typed.key) };
      return reply.page(tablePage(person, reply.formToken(), back, read.faults), { title: 'Not analysed yet' });
    });
  };
}

/** What is too much for the table is too much for the page. */
const withinLimit = (text: string): string => (text.length > mostTableBytes ? '' : text);
