export { upkeepRoutes } from './routes.js';
export { upkeepService, type UpkeepService } from './service.js';
export { backupNote, type ServerPlace } from './place.js';
