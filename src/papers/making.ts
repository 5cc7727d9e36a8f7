import { RungwiseError } from '../core/errors.js';
import { chooseQuestions, shortages, type Shortage } from '../core/papers/choose.js';
import { versionItems } from '../core/papers/versions.js';
import { randomFrom } from '../core/random.js';
import type { Region } from '../core/syllabus.js';
import type { PaperRow, QuestionsService } from '../questions/index.js';
import type { ItemRow } from './rows.js';
import { seedFor, sheetPools, type SheetCandidate } from './sheet-item.js';

/** Making a paper: the same pack, blueprint, seed and recent questions give the same paper. */

export interface PaperWish {
  paper: PaperRow;
  region: Region;
  seed: number;
  versions: number;
  /** Questions to avoid if that can be helped. */
  recent: ReadonlySet<number>;
}

export type Made = { versions: ItemRow[][] } | { short: (Shortage & { topicTitle: string })[] };

export type PaperMaker = ReturnType<typeof paperMaker>;

export function paperMaker(questions: QuestionsService) {
  const poolOf = sheetPools(questions);

  /** What a blueprint asks and the pack does not have there; empty when a paper can be made. */
  async function lacking({ pack, blueprint }: PaperRow, region: Region): Promise<(Shortage & { topicTitle: string })[]> {
    const pool = await poolOf(pack, region);
    const titles = new Map((await questions.catalogue()).filter(({ slug }) => slug === pack).map((row) => [row.topic, row.topicTitle]));
    return shortages(pool, blueprint.shares).map((short) => ({ ...short, topicTitle: titles.get(short.topic) ?? short.topic }));
  }

  async function make({ paper, region, seed, versions, recent }: PaperWish): Promise<Made> {
    const short = await lacking(paper, region);
    if (short.length > 0) return { short };
    const pool = await poolOf(paper.pack, region);
    const chosen = chooseQuestions(pool, paper.blueprint.shares, recent, randomFrom(`paper ${seed}`));
    const rows = new Map(pool.map((row) => [row.questionId, row]));
    const ordered = inSyllabusOrder(chosen, pool);
    const made: ItemRow[][] = [];
    for (let version = 1; version <= versions; version += 1) made.push(await versionOf(ordered, version, rows));
    return { versions: made };

    async function versionOf(order: readonly number[], version: number, known: ReadonlyMap<number, SheetCandidate>): Promise<ItemRow[]> {
      const banks = new Map(
        await Promise.all(
          order.map(async (questionId) => {
            const revision = known.get(questionId)?.revision ?? 1;
            const bank = await questions.get(questionId, revision);
            if (bank === null) throw new RungwiseError('internal', `question ${questionId} revision ${revision} is gone`);
            return [questionId, bank] as const;
          }),
        ),
      );
      const items = versionItems(order, version, randomFrom(`paper ${seed} version ${version}`), (questionId, random) => {
        const bank = banks.get(questionId);
        if (bank === undefined) throw new RungwiseError('internal', `question ${questionId} is not on this paper`);
        return seedFor(bank, region, random);
      });
      return items.map(({ questionId, seed: own }, index) => ({
        position: index + 1,
        questionId,
        revision: known.get(questionId)?.revision ?? 1,
        seed: own,
      }));
    }
  }

  return { make, lacking, poolOf };
}

/** Topic by topic, as the pack has them. */
function inSyllabusOrder(chosen: readonly number[], pool: readonly SheetCandidate[]): number[] {
  const wanted = new Set(chosen);
  return pool.filter(({ questionId }) => wanted.has(questionId)).map(({ questionId }) => questionId);
}

/** "Ladders lacks 2: the paper asks 6 and the pack has 4." */
export const shortWords = (short: readonly (Shortage & { topicTitle: string })[]): string =>
  short
    .map(({ topic, topicTitle, asked, have }) => `${topic} ${topicTitle} lacks ${asked - have}: ${asked} asked, ${have} there`)
    .join('; ');
