import type { PoolClient } from 'pg';
import { sameName } from '../core/names.js';
import { guestNamesIn, takeNamesOff } from '../papers/index.js';
import * as store from './removal-store.js';

/**
 * Removes a person and everything that is theirs, inside the caller's transaction. What others rely on stays without the name: a tutor's
 * classes, papers, evenings and signatures. Printed sheets in a candidate's own classes that bear the same name lose it, since a name
 * without an account is most likely the same person before they had one. Answers that go are in no figure any more.
 * The restore of an older backup calls it for everybody who was removed since.
 * @returns who it was; null when nobody has this number
 */
export async function removePersonRows(sql: Pick<PoolClient, 'query'>, personId: number): Promise<store.Removed | null> {
  const person = await store.holdPerson(sql, personId);
  if (person === null) return null;
  if (person.role === 'candidate') {
    const names = await guestNamesIn(sql, await store.classesOf(sql, personId));
    const same = names.filter(({ name }) => sameName(name, person.name));
    await takeNamesOff(
      sql,
      same.map(({ sittingId }) => sittingId),
    );
    await store.deleteOwnPapers(sql, personId);
  } else await store.takeNameOffSignatures(sql, personId, person.name);
  await store.deletePerson(sql, personId);
  return person;
}
