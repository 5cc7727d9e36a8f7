export { studyRoutes } from './routes.js';
export { studyService, type StudyService } from './service.js';
export { enrol, enrolAll } from './store.js';
export { nowPage } from './now-page.js';
export { putQuestion, type PutQuestion } from './put-question.js';
export { cautionPart, questionTitleBlock } from './pages.js';
