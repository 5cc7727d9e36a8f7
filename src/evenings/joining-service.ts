import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { lettersOf } from '../core/papers/sheet.js';
import { putAll, type SheetItem } from '../papers/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { BankQuestion, QuestionsService } from '../questions/index.js';
import { saveChoice } from './answer-store.js';
import * as store from './evening-store.js';
import type { EveningHead, EveningItemRow, OwnAnswer } from './rows.js';

/** A candidate's side of an evening: the question before the class, and one's own answer to it. */

export interface JoinedView {
  head: EveningHead;
  member: boolean;
  /** The question before the class, or the one that is looked at again; null before the first, and for who is not in the class any more. */
  asked: (SheetItem & EveningItemRow) | null;
  own: OwnAnswer | null;
  /** When the evening is over: every question, in turn. */
  all: (EveningItemRow & { own: OwnAnswer | null; bank: BankQuestion })[];
}

export type Chosen = { did: 'saved' | 'not-open' | 'recorded'; /** What stands now. */ own: string | null };

export function joiningService({ db, clock, questions }: { db: Db; clock: Clock; questions: QuestionsService }) {
  /** The evenings of one's classes that are not over: those that run first. */
  async function open(person: Person): Promise<EveningHead[]> {
    requirePermission(person, 'join-evenings');
    return await store.openEvenings(db, person.id);
  }

  /** What a candidate's first page says while an evening runs; null when none does. */
  async function notice(person: Person): Promise<{ text: string; href: string } | null> {
    const [first] = (await open(person)).filter(({ place }) => place > 0);
    return first === undefined
      ? null
      : { text: `Come in: ${first.title} is running in ${first.className}`, href: `/evening/${first.eveningId}` };
  }

  async function joined(person: Person, eveningId: string, position: number | null): Promise<store.JoinedRow> {
    requirePermission(person, 'join-evenings');
    const row = await store.findJoined(db, person.id, eveningId, position);
    if (row === null) throw new RungwiseError('not-found');
    return row;
  }

  const put = async (item: EveningItemRow, region: EveningHead['region']): Promise<SheetItem & EveningItemRow> => {
    const [asked] = await putAll(questions, [item], region);
    return { ...(asked as SheetItem), ...item };
  };

  async function view(person: Person, eveningId: string): Promise<JoinedView> {
    const { item, own, member, ...head } = await joined(person, eveningId, null);
    if (head.endedAt !== null) return { head, member, asked: null, own: null, all: await allOf(person, eveningId) };
    const asked = item === null || !member ? null : await put(item, head.region);
    return { head, member, asked, own, all: [] };
  }

  async function allOf(person: Person, eveningId: string): Promise<JoinedView['all']> {
    const rows = await store.ownAnswers(db, person.id, eveningId);
    return await Promise.all(
      rows.map(async (row) => {
        const bank = await questions.get(row.questionId, row.revision);
        if (bank === null) throw new RungwiseError('not-found', `question ${row.questionId} revision ${row.revision}`);
        return { ...row, bank };
      }),
    );
  }

  /** A question of the evening, once its key may be known; null before that. */
  async function review(person: Person, eveningId: string, position: number): Promise<JoinedView | null> {
    const { item, own, member, ...head } = await joined(person, eveningId, position);
    if (item === null) throw new RungwiseError('not-found');
    if (head.endedAt === null && item.state !== 'shown') return null;
    return { head, member, asked: await put(item, head.region), own, all: [] };
  }

  /** @throws RungwiseError `form-not-understood` for a letter that the question does not have */
  async function choose(person: Person, eveningId: string, position: number, letter: string): Promise<Chosen> {
    const before = await joined(person, eveningId, position);
    if (before.item === null) throw new RungwiseError('form-not-understood', 'no such question in this evening');
    if (!lettersOf((await put(before.item, before.region)).task).includes(letter))
      throw new RungwiseError('form-not-understood', `question ${position} has no ${letter}`);
    const did = await saveChoice(db, { eveningId, position, personId: person.id }, letter, clock.now());
    return { did, own: did === 'saved' ? letter : ((await joined(person, eveningId, position)).own?.choice ?? null) };
  }

  return { open, notice, joined, view, review, choose };
}
