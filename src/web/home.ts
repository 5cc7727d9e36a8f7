import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { welcomePage } from '../accounts/index.js';
import type { QueriesService } from '../bank/index.js';
import { may } from '../core/permissions.js';
import type { EveningsService } from '../evenings/index.js';
import type { PapersService } from '../papers/index.js';
import { classesPage, type TeachingService } from '../teaching/index.js';
import type { QuestionsService } from '../questions/index.js';
import type { UpkeepService } from '../upkeep/index.js';
import { nowPage, type StudyService } from '../study/index.js';
import type { AboutPage } from './page-types.js';

/** The first page, which draws on many features: welcome, what to do now, or the classes. */
export interface HomeNeeds {
  study: StudyService;
  teaching: TeachingService;
  questions: QuestionsService;
  queries: QueriesService;
  papers: PapersService;
  evenings: EveningsService;
  upkeep: UpkeepService;
}

export function homeRoutes({ study, teaching, questions, queries, papers, evenings, upkeep }: HomeNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    const config = { access: 'come-in' as const };

    app.get('/', { config }, async (request, reply) => {
      const { person } = request;
      if (person === null)
        return reply.page(welcomePage(await questions.count(), reply.formToken(), randomUUID()), {
          title: 'Welcome',
          layout: 'two',
          scripts: ['numeric-field'],
        });
      if (!may(person.role, 'study')) {
        const warnings = may(person.role, 'upkeep') ? await upkeep.warnings(person) : [];
        const page = classesPage(await teaching.overview(person), person, warnings);
        return reply.page(page, { title: 'Classes', styles: ['class.css'] });
      }
      const counts = await queries.counts(person);
      const waiting = { paper: await papers.own.notice(person), evening: await evenings.joining.notice(person) };
      const page = nowPage(await study.overview(person), person, reply.formToken(), randomUUID(), counts, waiting);
      return reply.page(page, { title: 'Now', layout: 'two' });
    });

    app.get('/about', { config }, async (_request, reply) => {
      const page: AboutPage = { view: 'home/about', data: { packs: (await questions.count()).packs } };
      return reply.page(page, { title: 'About' });
    });
  };
}
