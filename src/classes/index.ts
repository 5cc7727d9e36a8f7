export { classFor, tutorOf } from './access.js';
export type { ClassHead } from './head-store.js';
export { tutorPage } from './pages.js';
export { classesService, type ClassesService } from './service.js';
export { classTabs, type ClassTab } from './tabs.js';
