export { readPackFolder } from './read-folder.js';
export { packsService } from './service.js';
