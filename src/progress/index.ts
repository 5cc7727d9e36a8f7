export { progressRoutes } from './routes.js';
export { progressService, type ProgressService } from './service.js';
