import { limited, limits, requirePermission, type AccountsService, type Person } from '../accounts/index.js';
import type { Region } from '../core/syllabus.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import * as store from './joining-store.js';
import { classesOfMember, removeMember, type OwnClass } from './member-store.js';

/**
 * A candidate's side of classes: joining by a code, who sees what, leaving. A code that is unknown, closed or over, and one of a class
 * that has ended, answer alike; tries are counted before they are checked.
 */

export interface JoiningNeeds {
  db: Db;
  clock: Clock;
  accounts: Pick<AccountsService, 'start' | 'slipOf'>;
}

export interface OwnView {
  classes: OwnClass[];
  slip: { at: Date; by: string | null } | null;
}

export interface JoinStart {
  name: string;
  region: Region;
  timeZone: string;
  startToken: string;
}

export type JoiningService = ReturnType<typeof joiningService>;

export function joiningService({ db, clock, accounts }: JoiningNeeds) {
  const counted = <T>(address: string, right: (result: T) => boolean, work: () => Promise<T>): Promise<T> =>
    limited(db, clock.now(), [limits.join(address), limits.joinOfAll()], right, work);

  /** The class that a code opens, to whoever asks; null for any other code. */
  const look = (code: string, address: string): Promise<store.OpenClass | null> =>
    counted(
      address,
      (found) => found !== null,
      () => store.findOpenClass(db, code, clock.now()),
    );

  const isIn = (person: Person, found: store.OpenClass): Promise<boolean> => store.isMember(db, found.classId, person.id);

  async function join(person: Person, code: string, address: string): Promise<'joined' | 'already' | 'dead'> {
    requirePermission(person, 'be-in-classes');
    const joined = await counted(
      address,
      (found) => found !== null,
      () => store.joinByCode(db.pool, code, person.id, clock.now()),
    );
    if (joined === null) return 'dead';
    return joined ? 'joined' : 'already';
  }

  /** Makes a candidate who is in the class, or, when the code has died meanwhile, nobody. Null when this very form was sent before. */
  async function start(form: JoinStart, code: string, address: string): Promise<{ cookie: string; phrase: string[] } | 'dead' | null> {
    if ((await look(code, address)) === null) return 'dead';
    return await accounts
      .start(form, address, async (sql, personId) => {
        if ((await store.joinByCode(sql, code, personId, clock.now())) === null) throw new CodeDied();
      })
      .catch((error: unknown) => {
        if (error instanceof CodeDied) return 'dead';
        throw error;
      });
  }

  async function own(person: Person): Promise<OwnView> {
    requirePermission(person, 'be-in-classes');
    return { classes: await classesOfMember(db, person.id), slip: await accounts.slipOf(person) };
  }

  async function isInAny(person: Person): Promise<boolean> {
    requirePermission(person, 'be-in-classes');
    return (await classesOfMember(db, person.id)).length > 0;
  }

  /** Out of a class, which one may not have been in. Answers and papers stay one's own. */
  async function leave(person: Person, classId: number): Promise<void> {
    requirePermission(person, 'be-in-classes');
    await removeMember(db, classId, person.id);
  }

  return { look, isIn, join, start, own, isInAny, leave };
}

class CodeDied extends Error {}
