export { itemWords } from './plan-words.js';
export { classesPage } from './classes-page.js';
export { teachingRoutes } from './routes.js';
export { teachingService, type TeachingService } from './service.js';
