export { requirePermission } from './require-permission.js';
export { accountsService, type AccountsService } from './service.js';
export { accountsRoutes, keepPhrase } from './routes.js';
export { startForm } from './forms.js';
export { limited, limits } from './guess-limits.js';
export { originOf, typed, whyOf } from './route-needs.js';
export { ensureInstallation, type Installation } from './staff-store.js';
export type { Person } from './sessions.js';
export { regions, slipPart, welcomePage } from './pages.js';
