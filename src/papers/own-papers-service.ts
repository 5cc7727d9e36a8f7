import { randomInt } from 'node:crypto';
import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { minutesLeft } from '../core/papers/time.js';
import { counted } from '../core/words.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import type { PaperRow, QuestionsService } from '../questions/index.js';
import { nameOf, readPlanning, type Planning } from '../study/index.js';
import { openPapers, type OpenPaper } from './class-store.js';
import type { HandingIn } from './hand-in.js';
import { shortWords, type PaperMaker } from './making.js';
import { addPaper } from './paper-store.js';
import * as store from './sitting-store.js';

/** What papers a candidate has, and making one of one's own. */

interface OwnPapersNeeds {
  db: Db;
  clock: Clock;
  questions: QuestionsService;
  maker: PaperMaker;
  handingIn: HandingIn;
}

export interface PapersView {
  day: number;
  now: Date;
  /** Papers one may make, each with what the pack lacks for it, if anything. */
  offered: { name: string; paper: PaperRow; lacking: string | null; planned: boolean }[];
  open: OpenPaper[];
  sittings: store.SittingWithPaper[];
}

/** Days within which a question counts as seen lately. */
const recentDays = 14;

export type OwnPapersService = ReturnType<typeof ownPapersService>;

export function ownPapersService({ db, clock, questions, maker, handingIn }: OwnPapersNeeds) {
  const planningOf = (person: Person): Promise<Planning> => readPlanning({ db, clock, questions }, person);

  async function overview(person: Person): Promise<PapersView> {
    requirePermission(person, 'sit-papers');
    const now = clock.now();
    await handingIn.closeOverdue(now);
    const papers = await questions.papers();
    const { paper: planned, day } = await planningOf(person);
    const offered = await Promise.all(
      papers.map(async (paper) => {
        const short = await maker.lacking(paper, person.region);
        const name = nameOf(paper);
        return {
          name,
          paper,
          lacking: short.length === 0 ? null : shortWords(short),
          planned: planned !== null && nameOf(planned) === name,
        };
      }),
    );
    return { day, now, offered, open: await openPapers(db, person.id, now), sittings: await store.listSittings(db, person.id) };
  }

  /** Makes a paper and its sitting under one id, which the page made; sending it twice makes one. */
  async function makeOwn(person: Person, wish: { sitting: string; paper: string; extraTime: number }): Promise<void> {
    requirePermission(person, 'sit-papers');
    const planning = await planningOf(person);
    const paper = planning.papers.find((each) => nameOf(each) === wish.paper);
    if (paper === undefined) throw new RungwiseError('form-not-understood', 'no such paper');
    const recent = planning.pool.filter(({ memory }) => memory !== null && memory.lastDay > planning.day - recentDays);
    const seed = randomInt(2 ** 31);
    const made = await maker.make({
      paper,
      region: person.region,
      seed,
      versions: 1,
      recent: new Set(recent.map(({ questionId }) => questionId)),
    });
    if ('short' in made) throw new RungwiseError('paper-short', shortWords(made.short));
    const mine = (await store.listSittings(db, person.id)).filter(({ classId }) => classId === null).length;
    await inTransaction(db, async (sql) => {
      await store.dropUnbegun(sql, person.id, wish.sitting);
      await addPaper(sql, {
        paperId: wish.sitting,
        title: `Mock paper ${mine + 1}`,
        pack: paper.pack,
        blueprint: paper.blueprint,
        region: person.region,
        seed,
        madeBy: person.id,
        madeAt: clock.now(),
        classId: null,
        versions: made.versions,
        opensAt: null,
        closesAt: null,
      });
      const sitting = { sittingId: wish.sitting, paperId: wish.sitting, version: 1, personId: person.id, extraTime: wish.extraTime };
      await store.addSitting(sql, sitting);
    });
  }

  /** What a candidate's first page says of papers; null when nothing waits. */
  async function notice(person: Person): Promise<{ text: string; href: string; running: boolean } | null> {
    requirePermission(person, 'sit-papers');
    const now = clock.now();
    const running = await store.runningPaper(db, person.id, now);
    if (running !== null)
      return {
        text: `Carry on with ${running.title}: ${counted(minutesLeft(running.deadlineAt, now.getTime()), 'minute')} left`,
        href: `/papers/sittings/${running.sittingId}`,
        running: true,
      };
    const [open] = await openPapers(db, person.id, now);
    if (open === undefined) return null;
    return { text: `${open.title} is open to you: ${open.className ?? 'your class'} has set it.`, href: '/papers', running: false };
  }

  return { overview, makeOwn, notice };
}
