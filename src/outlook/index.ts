export { outlookRoutes } from './routes.js';
export { outlookService, type OutlookService } from './service.js';
