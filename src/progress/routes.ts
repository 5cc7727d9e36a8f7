import type { FastifyInstance } from 'fastify';
import { answersPage } from './answers-page.js';
import { readAnswerSearch } from './forms.js';
import { progressPage } from './page.js';
import type { ProgressService } from './service.js';

/** The progress of a candidate, and all answers. */
export function progressRoutes(progress: ProgressService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    const config = { access: 'study' as const };

    app.get('/progress', { config }, async (request, reply) => {
      const person = request.who();
      return reply.page(progressPage(await progress.view(person), person), { title: 'Progress', layout: 'two' });
    });

    app.get('/progress/answers', { config }, async (request, reply) => {
      const person = request.who();
      return reply.page(answersPage(await progress.answers(person, readAnswerSearch(request.query)), person), { title: 'Your answers' });
    });
  };
}
