import { randomUUID } from 'node:crypto';
import type { Person } from '../src/accounts/index.js';
import { keyLetter, lettersOf } from '../src/core/papers/sheet.js';
import { randomFrom } from '../src/core/random.js';
import { outlookService } from '../src/outlook/index.js';
import { papersService } from '../src/papers/index.js';
import { shiftedClock, type Clock } from '../src/platform/clock.js';
import type { Db } from '../src/platform/db.js';
import { questionsService } from '../src/questions/index.js';

/** The demonstration's papers: one that the class sat some days ago, and one that is open. */

export interface Sitter {
  person: Pick<Person, 'id' | 'timeZone' | 'region' | 'role' | 'displayName'>;
  /** How likely an answer is right, 0 to 1. */
  knows: number;
}

const dayMs = 86_400_000;
const daysAgo = 3;
const wish = { paper: 'entry-safety/safety-26', region: 'uk' as const };

/** Everybody but the last two sits it, which leaves somebody to ask after. */
export async function sitPapers(db: Db, clock: Clock, tutor: Person, classId: number, sitters: readonly Sitter[]): Promise<void> {
  const moved = shiftedClock(clock.now().getTime() - Date.now() - daysAgo * dayMs);
  const questions = questionsService({ db, clock: moved });
  const papers = papersService({ db, clock: moved, questions, outlook: outlookService({ db, clock: moved, questions }) });
  const [opensAt, closesAt] = [new Date(moved.now().getTime() - 60_000), new Date(moved.now().getTime() + 3_600_000)];
  const paperId = randomUUID();
  await papers.setting.set(tutor, { ...wish, paperId, classId, title: 'Autumn paper', versions: 4, opensAt, closesAt });
  for (const { person, knows } of sitters.slice(0, -2)) {
    const random = randomFrom(`paper of ${person.displayName}`);
    const who = person as Person;
    const sitting = await papers.sittings.takeUp(who, paperId);
    await papers.sittings.begin(who, sitting);
    const { items } = await papers.sittings.view(who, sitting);
    const choices = items.map(({ position, task }) => {
      const [key, letters] = [keyLetter(task), lettersOf(task)];
      const wrong = letters.filter((letter) => letter !== key);
      return { position, choice: random.next() < knows + 0.1 ? key : (wrong[random.below(wrong.length)] ?? key), again: false };
    });
    await papers.sittings.save(who, sitting, choices);
    await papers.sittings.handIn(who, sitting);
  }
  const now = clock.now().getTime();
  const window = { opensAt: new Date(now - 3_600_000), closesAt: new Date(now + 6 * dayMs) };
  await papers.setting.set(tutor, { ...wish, ...window, paperId: randomUUID(), classId, title: 'Winter paper', versions: 12 });
}
