import type { FastifyInstance } from 'fastify';
import { printRoutes } from './print-routes.js';
import type { PapersService } from './service.js';
import { sittingRoutes } from './sitting-routes.js';

/** All addresses of papers: a candidate's under /papers, a tutor's under /class-papers. */
export function papersRoutes(papers: PapersService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    sittingRoutes(app, papers.sittings);
    printRoutes(app, papers.setting);
  };
}
