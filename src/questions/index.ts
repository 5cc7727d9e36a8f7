export { questionsService, type BankQuestion, type QuestionsService } from './service.js';
export type { CatalogueRow, FamilyEntry, PaperRow, SkillRow } from './store.js';
