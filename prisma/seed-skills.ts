import { randomUUID } from 'node:crypto';
import type { Person } from '../src/accounts/index.js';
import { dayNumber, isoDay } from '../src/core/calendar.js';
import { shiftedClock, type Clock } from '../src/platform/clock.js';
import type { Db } from '../src/platform/db.js';
import { questionsService } from '../src/questions/index.js';
import { skillsService } from '../src/skills/index.js';

/** The demonstration's practical skills: two evenings at which some were shown and signed, and one signature that was a mistake. */

const dayMs = 86_400_000;

/** Who showed what: places in the list of members. */
const shown: readonly { skill: string; daysAgo: number; who: readonly number[]; remarks?: string }[] = [
  { skill: 'check-a-lead', daysAgo: 14, who: [0, 1, 2, 3, 5, 6, 8], remarks: 'Found the crushed place by hand, with eyes shut.' },
  { skill: 'the-one-switch', daysAgo: 14, who: [0, 1, 2, 5, 8] },
  { skill: 'wire-a-plug', daysAgo: 7, who: [0, 1, 3, 5] },
  { skill: 'choose-a-plug-fuse', daysAgo: 7, who: [1, 5], remarks: 'Asked for the maker’s figure before doing any sum.' },
  { skill: 'set-a-ladder', daysAgo: 7, who: [0, 1, 2] },
];
const mistake = { skill: 'set-a-ladder', who: 2, reason: 'Signed on the wrong sheet: it was Nettie who set the ladder.' };

/** @param tutor may sign in the class */
export async function signSkills(
  db: Db,
  clock: Clock,
  tutor: Person,
  classId: number,
  members: readonly Pick<Person, 'id'>[],
): Promise<void> {
  const at = (daysAgo: number) => {
    const moved = shiftedClock(clock.now().getTime() - Date.now() - daysAgo * dayMs);
    return { moved, skills: skillsService({ db, clock: moved, questions: questionsService({ db, clock: moved }) }) };
  };
  for (const { skill, daysAgo, who, remarks = '' } of shown) {
    const { moved, skills } = at(daysAgo);
    for (const place of who) {
      const memberId = members[place]?.id ?? 0;
      const asked = (await skills.sheet(tutor, classId, memberId)).skills.find(({ key }) => key === `entry-safety/${skill}`);
      if (asked === undefined) throw new Error(`the demonstration has no skill ${skill}`);
      const signed = await skills.signOff(tutor, classId, memberId, {
        id: randomUUID(),
        skill: asked.key,
        mark: asked.mark,
        ticked: asked.skill.criteria.map((_, index) => index),
        seenOn: isoDay(dayNumber(moved.now().getTime(), tutor.timeZone)),
        remarks: place === who[0] ? remarks : '',
      });
      if (signed.state !== 'signed') throw new Error(`the demonstration could not sign ${skill}`);
    }
  }
  const memberId = members[mistake.who]?.id ?? 0;
  const { skills } = at(6);
  const { signOffs } = await skills.sheet(tutor, classId, memberId);
  const wrong = signOffs.find(({ skill }) => skill === `entry-safety/${mistake.skill}`);
  await skills.withdraw(tutor, classId, memberId, { id: wrong?.id ?? '', reason: mistake.reason });
}
