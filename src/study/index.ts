export { studyRoutes } from './routes.js';
export { studyService, type StudyService } from './service.js';
export { enrol, enrolAll } from './store.js';
export { nameOf, readPlanning, startOf, type Planner, type Planning, type PlanningNeeds } from './planning.js';
export { renewCalendar, savePlan } from './plan-store.js';
export { replayAll, type ReplayReport } from './replay.js';
export { nowPage } from './now-page.js';
export { putQuestion, type PutQuestion } from './put-question.js';
export { cautionPart, field, questionTitleBlock } from './pages.js';
