import { RungwiseError } from '../core/errors.js';
import { may, type Permission } from '../core/permissions.js';
import type { Person } from './sessions.js';

/**
 * The first line of every service that acts for somebody.
 * @throws RungwiseError not-allowed, or sign-in-first for a visitor
 */
export function requirePermission(person: Person | null, permission: Permission): void {
  if (may(person?.role ?? 'visitor', permission)) return;
  throw new RungwiseError(person === null ? 'sign-in-first' : 'not-allowed');
}
