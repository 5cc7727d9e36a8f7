import type { FastifyInstance } from 'fastify';
import type { PapersService } from './service.js';

/** All addresses of papers: a candidate's under /papers, a tutor's under /class-papers. */
export function papersRoutes(papers: PapersService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    void [papers, app];
  };
}
