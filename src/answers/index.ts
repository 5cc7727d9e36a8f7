export { answeredOn, answersOfRound, findAnswer, recordAnswer, type AnsweredToday, type AnswerRow, type RecordedAnswer } from './store.js';
export { lockMemories, recordPaperAnswers, type LockedMemory, type PaperAnswer } from './paper-store.js';
