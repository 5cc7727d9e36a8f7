export { readAnswers, type PlacedFault } from './table-csv.js';
export { classQuestionRoutes } from './class-routes.js';
export { questionFiguresService, type QuestionFiguresService } from './question-service.js';
export { tableRoutes } from './table-routes.js';
export { tableService } from './table-service.js';
