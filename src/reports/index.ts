export { reportsRoutes } from './routes.js';
export { reportsService } from './service.js';
