import type { FastifyInstance } from 'fastify';
import { eventRoutes } from './event-routes.js';
import { joiningRoutes } from './joining-routes.js';
import { holdingRoutes, type HoldingNeeds } from './holding-routes.js';

/** All addresses of class evenings: a tutor's under the class, a candidate's under /evening. */
export function eveningsRoutes(needs: HoldingNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    holdingRoutes(app, needs);
    joiningRoutes(app, needs.evenings);
    eventRoutes(app, needs.evenings);
  };
}
