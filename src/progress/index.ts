export { progressRoutes } from './routes.js';
export { progressService } from './service.js';
