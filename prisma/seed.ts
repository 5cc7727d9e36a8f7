import { randomInt, randomUUID } from 'node:crypto';
import { accountsService, type Installation, type Person } from '../src/accounts/index.js';
import { randomFrom, type Random } from '../src/core/random.js';
import { makeCode } from '../src/core/join-code.js';
import { makePhrase } from '../src/core/return-phrase.js';
import { fieldsFor } from './seed-answers.js';
import { holdEvenings } from './seed-evenings.js';
import { sitPapers } from './seed-papers.js';
import { signSkills } from './seed-skills.js';
import type { Certainty } from '../src/core/questions/schema.js';
import { shiftedClock, type Clock } from '../src/platform/clock.js';
import type { Db } from '../src/platform/db.js';
import { hashPassword } from '../src/platform/password.js';
import { questionsService } from '../src/questions/index.js';
import { enrol, studyService, type StudyService } from '../src/study/index.js';

/**
 * A demonstration: the invented Nether Wobbling Radio Club, its Thursday class and three weeks of its study. Every answer
 * goes through the same services as a real one, on a clock that is moved; nobody in it exists.
 */

interface Pupil {
  name: string;
  /** How likely a first answer is right, 0 to 1. */
  knows: number;
  /** Share of days on which this person studies. */
  comes: number;
  /** How many days ago they began. */
  since: number;
  /** Days since they were last here. */
  away: number;
}

const pupils: Pupil[] = [
  { name: 'Zelda Marrow', knows: 0.7, comes: 0.8, since: 21, away: 1 },
  { name: 'Juniper Flint', knows: 0.85, comes: 0.9, since: 21, away: 0 },
  { name: 'Tansy Quill', knows: 0.55, comes: 0.6, since: 20, away: 1 },
  { name: 'Odo Brackle', knows: 0.45, comes: 0.7, since: 18, away: 2 },
  { name: 'Mungo Tarn', knows: 0.6, comes: 0.4, since: 21, away: 9 },
  { name: 'Hesper Vole', knows: 0.75, comes: 0.5, since: 14, away: 0 },
  { name: 'Barnaby Sedge', knows: 0.35, comes: 0.5, since: 16, away: 4 },
  { name: 'Wilf Pinder', knows: 0.5, comes: 0.3, since: 12, away: 6 },
  { name: 'Nettie Loam', knows: 0.65, comes: 0.7, since: 10, away: 1 },
  { name: 'Corin Ash', knows: 0.8, comes: 0.2, since: 21, away: 12 },
];

export interface DemonstrationAccess {
  tutor: { name: string; password: string };
  candidate: { name: string; phrase: string };
}

const dayMs = 86_400_000;
const tutorName = 'Alma Thrupp';

/** Fills an empty database; one that has people stays as it is. Both ways a fresh password and a fresh phrase are made. */
export async function fillDemonstration(db: Db, installation: Installation, clock: Clock): Promise<DemonstrationAccess> {
  const password = makePhrase((below) => randomInt(below))
    .slice(0, 4)
    .join(' ');
  if ((await db.prisma.person.count()) === 0) await fill(db, installation, clock);
  await db.prisma.person.update({ where: { signInName: tutorName.toLowerCase() }, data: { passwordHash: await hashPassword(password) } });
  const zelda = await db.prisma.person.findFirstOrThrow({ where: { displayName: (pupils[0] as Pupil).name }, orderBy: { id: 'asc' } });
  const accounts = accountsService({ db, clock, installation, enrol });
  const phrase = await accounts.newPhrase({ ...(zelda as unknown as Person), sessionHash: Buffer.alloc(32) });
  return { tutor: { name: tutorName, password }, candidate: { name: zelda.displayName, phrase: phrase.join(' ') } };
}

async function fill(db: Db, installation: Installation, clock: Clock): Promise<void> {
  const tutor = await db.prisma.person.create({
    data: { displayName: tutorName, signInName: tutorName.toLowerCase(), role: 'administrator', timeZone: 'Europe/London', region: 'uk' },
  });
  const members: Person[] = [];
  for (const pupil of pupils) members.push(await studyFor(db, installation, clock, pupil));
  const ago = (days: number): Date => new Date(clock.now().getTime() - days * dayMs);
  const made = await db.prisma.studyClass.create({
    data: {
      name: 'Thursday beginners',
      examOn: ago(-18),
      paper: 'entry-safety/safety-26',
      meetsOn: 4,
      meetsAt: '19:30',
      joinCode: makeCode((below) => randomInt(below)),
      joinUntil: ago(-30),
      tutors: { create: { personId: tutor.id } },
      members: { create: members.map((person, index) => ({ personId: person.id, joinedAt: ago(pupils[index]?.since ?? 0) })) },
    },
  });
  const sitters = members.map((person, index) => ({ person, knows: pupils[index]?.knows ?? 0.5 }));
  const signer = { ...(tutor as unknown as Person), sessionHash: Buffer.alloc(32) };
  await sitPapers(db, clock, signer, made.id, sitters);
  await holdEvenings(db, clock, signer, made.id, sitters);
  await signSkills(db, clock, signer, made.id, members);
}

/** Lets one person study through the weeks, day by day. */
async function studyFor(db: Db, installation: Installation, clock: Clock, pupil: Pupil): Promise<Person> {
  const random = randomFrom(pupil.name);
  const services = (daysAgo: number) => {
    // Evenings, each at its own minute; today's lies a little in the past.
    const moved = shiftedClock(clock.now().getTime() - Date.now() - daysAgo * dayMs - random.below(90) * 60_000);
    return {
      accounts: accountsService({ db, clock: moved, installation, enrol }),
      study: studyService({ db, clock: moved, questions: questionsService({ db, clock: moved }) }),
    };
  };
  const form = { name: pupil.name, region: 'uk' as const, timeZone: 'Europe/London', startToken: randomUUID() };
  const first = services(pupil.since);
  const started = await first.accounts.start(form, `demonstration ${pupil.name}`);
  const person = await first.accounts.whoHolds(started?.cookie ?? '');
  if (person === null) throw new Error('the demonstration could not make a candidate');
  const skill = new Map<number, number>();
  for (let daysAgo = pupil.since; daysAgo >= pupil.away; daysAgo -= 1) {
    if (daysAgo === pupil.since || daysAgo === pupil.away || random.next() < pupil.comes)
      await evening(services(daysAgo).study, person, pupil, random, skill);
  }
  const seen = new Date(clock.now().getTime() - pupil.away * dayMs - 3_600_000);
  await db.prisma.person.update({ where: { id: person.id }, data: { lastSeenAt: seen } });
  return person;
}

async function evening(study: StudyService, person: Person, pupil: Pupil, random: Random, skill: Map<number, number>): Promise<void> {
  const round = randomUUID();
  await study.startRound(person, { round, minutes: random.next() < 0.3 ? 10 : 20 });
  for (let item = await study.question(person, round); item !== null; item = await study.question(person, round)) {
    const met = skill.get(item.questionId) ?? 0;
    const right = random.next() < Math.min(0.97, pupil.knows + 0.12 * met);
    skill.set(item.questionId, met + 1);
    await study.answer(person, { token: item.token, certainty: certaintyOf(right, random), ...fieldsFor(item.put.task, right, random) });
  }
}

function certaintyOf(right: boolean, random: Random): Certainty {
  const chance = random.next();
  if (right) return chance < 0.6 ? 'sure' : chance < 0.9 ? 'fairly' : 'guessing';
  return chance < 0.15 ? 'sure' : chance < 0.55 ? 'fairly' : 'guessing';
}
