import { requirePermission, type Person } from '../accounts/index.js';
import { dayNumber } from '../core/calendar.js';
import { fewestPeople } from '../core/group-figures.js';
import { memoryModel } from '../core/memory.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { QuestionsService } from '../questions/index.js';
import { listClasses, tutorOf, type ClassHead } from '../classes/index.js';
import * as store from './club-store.js';
import { topicsOf, type TopicRow } from './grid-store.js';

/** Classes by topics, and everybody who studies here as a group. */

export interface ClubView {
  now: Date;
  packTitle: string | null;
  topics: readonly TopicRow[];
  classes: { head: ClassHead; topics: readonly store.ClassTopic[] }[];
  /** Figures of at least so many people only: fewer would be figures of persons. */
  everybody: readonly store.TopicStanding[];
}

export function clubService({ db, clock, questions }: { db: Db; clock: Clock; questions: QuestionsService }) {
  const { curve } = memoryModel();

  async function view(person: Person): Promise<ClubView> {
    requirePermission(person, 'see-classes');
    const now = clock.now();
    const [paper] = await questions.papers();
    if (paper === undefined) return { now, packTitle: null, topics: [], classes: [], everybody: [] };
    const day = dayNumber(now.getTime(), person.timeZone);
    const heads = (await listClasses(db, tutorOf(person))).filter(({ ended }) => !ended);
    await store.ensureTopicDay(db, day, curve);
    const everybody = await store.topicDay(db, day, paper.pack);
    const topics = await store.classTopics(
      db,
      heads.map(({ classId }) => classId),
      paper.pack,
      day,
      curve,
    );
    return {
      now,
      packTitle: paper.packTitle,
      topics: await topicsOf(db, paper.pack),
      classes: heads.map((head) => ({ head, topics: topics.filter(({ classId }) => classId === head.classId) })),
      everybody: everybody.filter(({ people }) => people >= fewestPeople),
    };
  }
  return { view };
}
