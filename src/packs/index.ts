export { readPackFolderApart, type ReadApart } from './read-apart.js';
export { readPackFolder, type Finding } from './read-folder.js';
export { packsService } from './service.js';
