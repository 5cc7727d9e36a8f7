import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { QuestionsService } from '../questions/index.js';
import { holdingService } from './holding-service.js';
import { joiningService } from './joining-service.js';
import { LiveEvenings } from './live.js';
import { makingService } from './making-service.js';

/** Class evenings: made and held by a tutor, answered on candidates' own phones. */

export type EveningsService = ReturnType<typeof eveningsService>;

/** @param log gets what went wrong behind the streams */
export function eveningsService(needs: { db: Db; clock: Clock; questions: QuestionsService; log: (error: unknown) => void }) {
  const live = new LiveEvenings(needs);
  return { live, making: makingService(needs), holding: holdingService({ ...needs, live }), joining: joiningService(needs) };
}
