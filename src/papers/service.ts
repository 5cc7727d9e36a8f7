import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { OutlookService } from '../outlook/index.js';
import type { QuestionsService } from '../questions/index.js';
import { blueprintsService } from './blueprint-service.js';
import { calibrationService } from './calibration.js';
import { correcting } from './correcting.js';
import { entryService } from './entry-service.js';
import { handingIn } from './hand-in.js';
import { paperMaker } from './making.js';
import { ownPapersService } from './own-papers-service.js';
import { settingService } from './set-service.js';
import { sittingsService } from './sitting-service.js';

/** Mock papers: a candidate's own and those set for a class, on a screen and on paper. */

export type PapersService = ReturnType<typeof papersService>;

export function papersService(needs: { db: Db; clock: Clock; questions: QuestionsService; outlook: OutlookService }) {
  const { db, clock, questions } = needs;
  const shared = {
    ...needs,
    maker: paperMaker(questions),
    handingIn: handingIn({ db, questions }),
    correcting: correcting({ db, clock, questions }),
  };
  const setting = settingService(shared);
  return {
    own: ownPapersService(shared),
    sittings: sittingsService(shared),
    setting,
    entry: entryService({ ...shared, setting }),
    blueprints: blueprintsService(shared),
    calibration: calibrationService({ db, clock }),
  };
}
