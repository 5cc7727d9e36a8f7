import { randomUUID } from 'node:crypto';
import type { Person } from '../src/accounts/index.js';
import { eveningsService } from '../src/evenings/index.js';
import { keyLetter, lettersOf } from '../src/core/papers/sheet.js';
import { randomFrom, type Random } from '../src/core/random.js';
import { shiftedClock, type Clock } from '../src/platform/clock.js';
import type { Db } from '../src/platform/db.js';
import { questionsService } from '../src/questions/index.js';
import type { Sitter } from './seed-papers.js';

/** The demonstration's class evenings: one that was held last Thursday, and one that is ready. */

const dayMs = 86_400_000;
const thursday = 4;

function services(db: Db, clock: Clock, daysAgo: number) {
  const moved = shiftedClock(clock.now().getTime() - Date.now() - daysAgo * dayMs);
  return eveningsService({ db, clock: moved, questions: questionsService({ db, clock: moved }), log: () => undefined });
}

/** Everybody with a phone but the last two, who put up their hands. */
export async function holdEvenings(db: Db, clock: Clock, tutor: Person, classId: number, sitters: readonly Sitter[]): Promise<void> {
  const daysAgo = (clock.now().getUTCDay() - thursday + 7) % 7 || 7;
  const wish = { region: 'uk' as const, questions: '', topics: [], count: 6 };
  const held = services(db, clock, daysAgo);
  const eveningId = randomUUID();
  await held.making.make(tutor, classId, { ...wish, eveningId, title: 'What you are least sure of' });
  const random = randomFrom('evening');
  const { items } = await held.holding.view(tutor, classId, eveningId);
  for (const { position, task } of items) {
    await held.holding.step(tutor, classId, eveningId, 'next', position - 1);
    await held.holding.step(tutor, classId, eveningId, 'open', position);
    const [key, letters] = [keyLetter(task), lettersOf(task)];
    for (const { person, knows } of sitters.slice(0, -2))
      await held.joining.choose(person as Person, eveningId, position, letterFrom(key, letters, knows, random));
    const hands = letters.map(() => 0);
    for (const { knows } of sitters.slice(-2)) {
      const at = letters.indexOf(letterFrom(key, letters, knows, random));
      hands[at] = (hands[at] ?? 0) + 1;
    }
    await held.holding.setHands(tutor, classId, eveningId, position, hands);
    await held.holding.step(tutor, classId, eveningId, 'close', position);
    await held.holding.step(tutor, classId, eveningId, 'show', position);
  }
  await held.holding.step(tutor, classId, eveningId, 'end', items.length);
  await services(db, clock, 0).making.make(tutor, classId, { ...wish, eveningId: randomUUID(), title: 'Opener for Thursday' });
}

function letterFrom(key: string, letters: readonly string[], knows: number, random: Random): string {
  const wrong = letters.filter((letter) => letter !== key);
  return random.next() < knows ? key : (wrong[random.below(wrong.length)] ?? key);
}
