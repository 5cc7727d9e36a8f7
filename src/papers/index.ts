export { papersRoutes } from './routes.js';
export { papersService, type PapersService } from './service.js';
