import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import type { Permission } from '../core/permissions.js';
import type { Db } from '../platform/db.js';
import { findClass, type ClassHead } from './head-store.js';

/** Whose classes somebody may see: a tutor's own; all of them, told by null, for an administrator. */
export const tutorOf = (person: Pick<Person, 'id' | 'role'>): number | null => (person.role === 'administrator' ? null : person.id);

/**
 * A class that this person is tutor of. Another's class answers as one that does not exist.
 * @throws RungwiseError `not-found`, and what `requirePermission` throws
 */
export async function classFor(db: Db, person: Person, classId: number, permission: Permission): Promise<ClassHead> {
  requirePermission(person, permission);
  const head = await findClass(db, tutorOf(person), classId);
  if (head === null) throw new RungwiseError('not-found');
  return head;
}
