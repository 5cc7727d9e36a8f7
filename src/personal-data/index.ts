export { heldService } from './held-service.js';
export { removalService, type RemovedList } from './removal-service.js';
export { removePersonRows } from './remove-person.js';
export { retentionService } from './retention-service.js';
export { personalDataRoutes } from './routes.js';
