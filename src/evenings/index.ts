export { eveningsRoutes } from './routes.js';
export { eveningsService, type EveningsService } from './service.js';
