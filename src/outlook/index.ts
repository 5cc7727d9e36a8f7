export { outlookRoutes } from './routes.js';
export { outlookService } from './service.js';
