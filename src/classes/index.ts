export { tutorPage } from './pages.js';
export { classesService, type ClassesService } from './service.js';
