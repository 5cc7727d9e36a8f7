export { changesList, type ChangesList, type ListedChange } from './service.js';
export { recordChange } from './store.js';
