export { bankService } from './service.js';
export { queriesService, type QueriesService } from './queries.js';
export { bankRoutes } from './routes.js';
