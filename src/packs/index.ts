export { readPackFolderApart, type ReadApart } from './read-apart.js';
export { readPackFolder, type Finding } from './read-folder.js';
export { refusalWords, type PackPlan } from './plan.js';
export { packsService } from './service.js';
export { examinePath } from './examine.js';
export { packsRoutes } from './routes.js';
export { uploadsService } from './uploads.js';
