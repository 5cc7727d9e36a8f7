export { calculatorsRoutes } from './routes.js';
export { calculatorsService } from './service.js';
