import type { FastifyInstance } from 'fastify';
import { blueprintRoutes } from './blueprint-routes.js';
import { entryRoutes } from './entry-routes.js';
import { printRoutes } from './print-routes.js';
import type { PapersService } from './service.js';
import { setRoutes } from './set-routes.js';
import { sittingRoutes } from './sitting-routes.js';

/** All addresses of papers: a candidate's under /papers, a tutor's under /class-papers. */
export function papersRoutes(papers: PapersService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    sittingRoutes(app, papers.own, papers.sittings);
    setRoutes(app, papers.setting, papers.calibration);
    blueprintRoutes(app, papers.blueprints);
    printRoutes(app, papers.setting);
    entryRoutes(app, papers);
  };
}
