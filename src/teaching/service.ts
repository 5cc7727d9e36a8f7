import { requirePermission, type Person } from '../accounts/index.js';
import type { ClassChances } from '../outlook/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { QuestionsService } from '../questions/index.js';
import { awayDays, listClasses, tutorOf } from '../classes/index.js';
import { cellService } from './cell-service.js';
import { clubService } from './club-service.js';
import { gridService } from './grid-service.js';
import { linesOf, surelyWrongOf } from './grid-store.js';

import { planService } from './plan-service.js';

/** How classes stand, and what to do about it. */

export type TeachingService = ReturnType<typeof teachingService>;

export function teachingService(needs: { db: Db; clock: Clock; questions: QuestionsService; chances: ClassChances }) {
  const { db, clock } = needs;
  const grid = gridService(needs);
  const plan = planService({ ...needs, grid });

  /** The classes of a tutor; all of them for an administrator. */
  async function overview(person: Person) {
    requirePermission(person, 'see-classes');
    const now = clock.now();
    const heads = await listClasses(db, tutorOf(person));
    const since = new Date(now.getTime() - awayDays * 86_400_000);
    return {
      now,
      heads,
      lines: await linesOf(
        db,
        heads.map(({ classId }) => classId),
        since,
      ),
    };
  }

  /** The class grid with the plan and the mistakes that people are sure of. */
  async function stand(person: Person, classId: number, on: 'today' | 'exam') {
    const view = await grid.view(person, classId, on);
    return { view, plan: await plan.planFor(view), mistakes: await surelyWrongOf(db, classId) };
  }

  return { overview, stand, plan: plan.view, cell: cellService({ ...needs, grid }).view, club: clubService(needs).view };
}
