import { memoryModel } from '../core/memory.js';
import type { OutlookQuestion } from '../core/outlook/chance.js';
import { lossesOf, topicChances, type Loss } from '../core/outlook/losses.js';
import { outlookOf, type OutlookInput } from '../core/outlook/outlook.js';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';
import type { CatalogueRow, PaperRow, QuestionsService } from '../questions/index.js';
import { onPaper } from './on-paper.js';
import { neededQuestions } from './needed.js';
import * as store from './many-store.js';

/** Outlooks of many candidates for one paper at once: as things stand, on a day, if nothing more was learnt till then. */

export interface Sitter {
  personId: number;
  region: Region;
  /** The day of the paper, in the candidate's own calendar. */
  day: number;
  /** Answers so far: what is known of somebody changes with nothing else. */
  answers: number;
}

export interface Standing {
  /** The chance of passing; null while too few questions were met. */
  chance: { low: number; high: number } | null;
  /** Questions of the pack met. */
  met: number;
  losses: readonly Loss[];
  /** By topic: the chance of being right on any of its questions, asked before or not. */
  topics: ReadonlyMap<string, number>;
}

/** As many as a few large classes; an entry is some 10 kB. */
const keepMost = 2_000;

export type ClassChances = ReturnType<typeof classChances>;

export function classChances({ db, questions }: { db: Db; questions: QuestionsService }) {
  const model = memoryModel();
  /** An outlook costs a millisecond or two, so it is worked out again only after an answer, on another day or for another paper. */
  const kept = new Map<number, { key: string; standing: Standing }>();

  /** @returns by candidate; everybody asked for is in it */
  async function of(sitters: readonly Sitter[], paper: PaperRow): Promise<Map<number, Standing>> {
    const catalogue = (await questions.catalogue()).filter(({ slug }) => slug === paper.pack);
    const { shares, passMark } = paper.blueprint;
    // A pack that was changed has other questions.
    const made = JSON.stringify([paper.pack, shares, passMark, catalogue.length]);
    const keyOf = ({ day, answers, region }: Sitter): string => `${made} ${region} ${day} ${answers}`;
    const wanted = sitters.filter((sitter) => kept.get(sitter.personId)?.key !== keyOf(sitter));
    const fresh = await standings(wanted, paper, catalogue);
    if (kept.size + fresh.size > keepMost) kept.clear();
    for (const sitter of wanted) kept.set(sitter.personId, { key: keyOf(sitter), standing: fresh.get(sitter.personId) as Standing });
    return new Map(sitters.map(({ personId }) => [personId, kept.get(personId)?.standing as Standing]));
  }

  async function standings(
    sitters: readonly Sitter[],
    paper: PaperRow,
    catalogue: readonly CatalogueRow[],
  ): Promise<Map<number, Standing>> {
    if (sitters.length === 0) return new Map();
    const ids = sitters.map(({ personId }) => personId);
    const [known, sights] = [await store.memoriesOf(db, ids), await store.firstSightsOf(db, ids, paper.pack)];
    return new Map(
      sitters.map((sitter) => {
        const own = questionsFor(catalogue, sitter.region, known.get(sitter.personId) ?? new Map());
        const firstSights = sights.get(sitter.personId) ?? [];
        return [sitter.personId, standingOf(own, { questions: onPaper(own), paper: paper.blueprint, day: sitter.day, firstSights })];
      }),
    );
  }

  function standingOf(own: readonly OutlookQuestion[], input: OutlookInput): Standing {
    const met = own.filter(({ memory }) => memory !== null).length;
    const enough = met >= Math.min(neededQuestions, own.length);
    const { low, high } = outlookOf(input, model);
    return {
      chance: enough ? { low, high } : null,
      met,
      losses: lossesOf(input, model),
      topics: topicChances(input.questions, input.firstSights, input.day, model),
    };
  }

  return { of };
}

function questionsFor(catalogue: readonly CatalogueRow[], region: Region, known: ReadonlyMap<number, store.MemoryOf>): OutlookQuestion[] {
  return catalogue.flatMap(({ questionId, regions, topic, objective, kind }): OutlookQuestion[] => {
    if (!regions.includes(region)) return [];
    const { memory = null, surelyWrong = false } = known.get(questionId) ?? {};
    return [{ topic, objective, kind, memory, surelyWrong, seconds: 0 }];
  });
}
