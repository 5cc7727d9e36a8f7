export { questionsService, type BankQuestion, type QuestionsService } from './service.js';
export type { FamilyEntry } from './store.js';
