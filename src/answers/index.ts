export {
  answersOfRound,
  findAnswer,
  recordAnswer,
  type AnswerRow,
  type FreshItem,
  type MemoryAfter,
  type MemoryBefore,
  type RecordedAnswer,
} from './store.js';
