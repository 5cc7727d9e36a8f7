import { RungwiseError } from '../core/errors.js';
import type { Clock } from '../platform/clock.js';
import type { Bank } from './pages.js';
import type { AccountsService } from './service.js';
import type { Person } from './sessions.js';

/** What the routes of accounts share. */

export interface AccountsRoutesNeeds {
  accounts: AccountsService;
  clock: Clock;
  /** The address people type, such as https://study.example; null means whatever they asked for. */
  origin: string | null;
  bank: () => Promise<Bank>;
  /** Whether a candidate is in a class. */
  inClasses: (person: Person) => Promise<boolean>;
}

export const originOf = (needs: Pick<AccountsRoutesNeeds, 'origin'>, request: { protocol: string; host: string }): string =>
  needs.origin ?? `${request.protocol}://${request.host}`;

/** The first message of a form for one of its fields. */
export function whyOf(error: { issues: { path: PropertyKey[]; message: string }[] }, name: string): string | null {
  return error.issues.find((issue) => issue.path[0] === name)?.message ?? null;
}

/** What a form of ours holds that nobody types. @throws RungwiseError `form-not-understood` for what our pages cannot have sent */
export function chosen<T>(parsed: { success: true; data: T } | { success: false }): T {
  if (!parsed.success) throw new RungwiseError('form-not-understood');
  return parsed.data;
}

export const typed = (body: unknown, name: string): string => {
  const value = (body as Record<string, unknown> | null | undefined)?.[name];
  return typeof value === 'string' ? value.slice(0, 400) : '';
};
