import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { rowNumber } from '../core/address-number.js';
import { known } from '../core/errors.js';
import { classQuestionsPage } from './class-questions-page.js';
import { questionFiguresPage } from './question-figures-page.js';
import type { QuestionFiguresService } from './question-service.js';

/** Which question is bad, for a class that one is tutor of; another's answers as one that does not exist. */

const config = { access: 'analyse-questions' as const };

const classParams = z.object({ class: rowNumber });
const questionParams = z.object({ class: rowNumber, question: rowNumber });
/** An address that says something else is read as if it did not. */
const asked = z.object({ of: z.enum(['class', 'club', 'all']).catch('class') });

export function classQuestionRoutes(figures: QuestionFiguresService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    app.get('/classes/:class/questions', { config }, async (request, reply) => {
      const person = request.who();
      const { class: classId } = known(classParams.safeParse(request.params));
      const page = classQuestionsPage(await figures.list(person, classId, asked.parse(request.query ?? {}).of), person);
      return reply.page(page, { title: 'Which question is bad', styles: ['class.css'] });
    });

    app.get('/classes/:class/questions/:question', { config }, async (request, reply) => {
      const person = request.who();
      const { class: classId, question } = known(questionParams.safeParse(request.params));
      const page = questionFiguresPage(await figures.one(person, classId, question, asked.parse(request.query ?? {}).of), person);
      return reply.page(page, { title: page.data.code, layout: 'two', styles: ['class.css'] });
    });
  };
}
