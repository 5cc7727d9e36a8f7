export { answersOfRound, findAnswer, recordAnswer, type AnswerRow, type RecordedAnswer } from './store.js';
