export { papersRoutes } from './routes.js';
export { guestNamesIn, oldGuestSheets, takeNamesOff } from './guest-names-store.js';
export { papersService, type PapersService } from './service.js';
export { isRight, learnt } from './learning.js';
export { putAll, seedFor, sheetPools, type SheetCandidate, type SheetItem } from './sheet-item.js';
export { optionsOf, sheetDrawing } from './sheet-part.js';
