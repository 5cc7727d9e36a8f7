export { classFor, tutorOf } from './access.js';
export { listClasses, type ClassHead } from './head-store.js';
export { joiningService } from './joining-service.js';
export { memberRoutes } from './member-routes.js';
export { memberService } from './member-service.js';
export { peopleRoutes } from './people-routes.js';
export { peopleService } from './people-service.js';
export { classTabs, type ClassTab } from './tabs.js';
export { awayDays, candidates, daysSince, examWords, meetingTimes, paperNote, seenWords } from './words.js';
