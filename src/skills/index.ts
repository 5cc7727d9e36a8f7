export { skillsRoutes } from './routes.js';
export { skillsService } from './service.js';
