import { requirePermission, type Person } from '../accounts/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { readClasses, readMistakes } from './store.js';

/** The tutor's side. */
export type ClassesService = ReturnType<typeof classesService>;

export function classesService({ db, clock }: { db: Db; clock: Clock }) {
  async function overview(person: Person) {
    requirePermission(person, 'see-classes');
    const tutor = person.role === 'administrator' ? null : person.id;
    const [rows, mistakes] = [await readClasses(db, tutor), await readMistakes(db, tutor)];
    return { rows, mistakes, now: clock.now() };
  }
  return { overview };
}
