export { requirePermission } from './require-permission.js';
export { accountsService, type AccountsService } from './service.js';
export { accountsRoutes } from './routes.js';
export { ensureInstallation, type Installation } from './staff-store.js';
export type { Person } from './sessions.js';
export type { TutorPage } from './page-types.js';
export { welcomePage } from './pages.js';
