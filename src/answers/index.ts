export { answeredOn, answersOfRound, findAnswer, recordAnswer, type AnswerRow, type AnsweredToday, type RecordedAnswer } from './store.js';
