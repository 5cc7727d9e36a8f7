import { RungwiseError } from '../core/errors.js';
import type { Drawing } from '../core/drawing.js';
import { fitsSheet, paperKinds, sheetFamily, sheetFixed, sheetSeed, type SheetTask } from '../core/papers/sheet.js';
import type { PaperCandidate } from '../core/papers/choose.js';
import type { Random } from '../core/random.js';
import type { Caution, Region } from '../core/syllabus.js';
import type { BankQuestion, CatalogueRow, QuestionsService } from '../questions/index.js';
import type { ItemRow } from './rows.js';

/** The bank's questions as papers ask them. */

/** One question of a version, with its numbers drawn and its options in order. */
export interface SheetItem extends ItemRow {
  bank: BankQuestion;
  stem: string;
  task: SheetTask;
  /** Beside the options; that of a `place` question is in its task. */
  drawing: Drawing | null;
  /** The question's own caution, for after the paper. */
  caution: Caution | null;
}

export function putOnSheet(bank: BankQuestion, item: ItemRow, region: Region): SheetItem {
  if (bank.item.kind === 'fixed') {
    const { question, drawing } = bank.item;
    const task = sheetFixed(question, item.seed, drawing);
    return {
      ...item,
      bank,
      stem: question.stem,
      task,
      drawing: task.kind === 'place' ? null : drawing,
      caution: bank.caution(question.caution),
    };
  }
  const compiled = bank.item.compiled(region);
  const task = compiled === null ? null : sheetFamily(compiled, item.seed);
  if (task === null) throw new RungwiseError('internal', `family ${bank.code} cannot be put on a paper for region ${region}`);
  return { ...item, bank, stem: task.stem, task, drawing: null, caution: bank.caution(task.caution) };
}

/** @throws RungwiseError `not-found` when the bank has lost a revision, which it never does */
export async function putAll(questions: QuestionsService, items: readonly ItemRow[], region: Region): Promise<SheetItem[]> {
  return await Promise.all(
    items.map(async (item) => {
      const bank = await questions.get(item.questionId, item.revision);
      if (bank === null) throw new RungwiseError('not-found', `question ${item.questionId} revision ${item.revision}`);
      return putOnSheet(bank, item, region);
    }),
  );
}

export interface SheetCandidate extends PaperCandidate, Pick<CatalogueRow, 'revision' | 'slug' | 'kind' | 'topicTitle'> {}

/** What a pack has for papers in a region: one letter answers it, and a family has four options to choose from. */
export function sheetPools(questions: QuestionsService) {
  const fits = new Map<string, boolean>();

  async function familyFits({ questionId, revision }: CatalogueRow, region: Region): Promise<boolean> {
    const key = `${questionId}/${revision}/${region}`;
    const known = fits.get(key);
    if (known !== undefined) return known;
    const bank = await questions.get(questionId, revision);
    const compiled = bank?.item.kind === 'numeric' ? bank.item.compiled(region) : null;
    const answer = compiled !== null && fitsSheet(compiled);
    fits.set(key, answer);
    return answer;
  }

  return async function poolOf(pack: string, region: Region): Promise<SheetCandidate[]> {
    const rows = (await questions.catalogue()).filter(
      (row) => row.slug === pack && row.regions.includes(region) && paperKinds.has(row.kind),
    );
    const usable: SheetCandidate[] = [];
    for (const row of rows) if (row.kind !== 'numeric' || (await familyFits(row, region))) usable.push(row);
    return usable;
  };
}

/** A seed with which the question can stand on a sheet. */
export function seedFor(bank: BankQuestion, region: Region, random: Random): number {
  if (bank.item.kind === 'fixed') return random.below(2 ** 31);
  const compiled = bank.item.compiled(region);
  const seed = compiled === null ? null : sheetSeed(compiled, random);
  if (seed === null) throw new RungwiseError('internal', `family ${bank.code} cannot be put on a paper for region ${region}`);
  return seed;
}
