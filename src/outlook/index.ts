export { outlookRoutes } from './routes.js';
export { outlookService, type OutlookService } from './service.js';
export { classChances, type ClassChances, type Standing } from './chances-service.js';
export { percent, shownRange, tenths } from './words.js';
