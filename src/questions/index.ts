export { questionsService, type BankQuestion, type QuestionsService } from './service.js';
