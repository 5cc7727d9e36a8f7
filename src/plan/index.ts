export { planRoutes } from './routes.js';
export { planService } from './service.js';
