import type { Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { memoryModel } from '../core/memory.js';
import { givenWords } from '../core/tasks/answered-part.js';
import { memoryOf, putQuestion } from '../study/index.js';
import { topicsOf, type TopicRow } from './grid-store.js';
import type { GridNeeds, GridRow, GridService } from './grid-service.js';
import type { ClassHead } from '../classes/index.js';
import * as store from './plan-store.js';

/** What stands behind one figure of the class grid: one candidate's answers in one topic. */

export interface CellView {
  head: ClassHead;
  member: GridRow;
  topic: TopicRow;
  /** The figure of the grid: the chance of being right on any question of the topic; null before the first answer. */
  chance: number | null;
  now: Date;
  questions: {
    questionId: number;
    code: string;
    stem: string;
    objective: string;
    /** Chance to recall it today. */
    recall: number;
    surelyWrong: boolean;
    /** The latest first. */
    answers: { day: number; right: boolean; certainty: store.CellAnswer['certainty']; said: string }[];
  }[];
  /** Never asked. */
  unmet: { questionId: number; code: string; stem: string; objective: string }[];
}

/** Enough to see a way of going wrong; older ones are only counted. */
const shownAnswers = 4;

export function cellService({ db, questions, grid }: Pick<GridNeeds, 'db' | 'questions'> & { grid: GridService }) {
  const model = memoryModel();

  /** @throws RungwiseError `not-found` for anybody who is not in the class and for a topic that its pack does not have */
  async function view(person: Person, classId: number, memberId: number, topicCode: string): Promise<CellView> {
    const { head, paper, row: member, now } = await grid.member(person, classId, memberId);
    const { pack } = paper.paper;
    const topic = (await topicsOf(db, pack)).find(({ code }) => code === topicCode);
    if (topic === undefined) throw new RungwiseError('not-found');
    const [all, answers] = [
      await store.cellQuestions(db, memberId, pack, topicCode),
      await store.cellAnswers(db, memberId, pack, topicCode),
    ];
    const met = all.flatMap((row) => {
      const memory = memoryOf(row);
      return memory === null ? [] : [{ ...row, recall: model.recall(memory, member.today) }];
    });
    const rows = await Promise.all(
      met.map(async (row) => ({
        ...row,
        answers: await Promise.all(
          answers
            .filter(({ questionId }) => questionId === row.questionId)
            .slice(0, shownAnswers)
            .map(async (answer) => ({ ...answer, said: await saidOf(answer) })),
        ),
      })),
    );
    rows.sort((a, b) => a.recall - b.recall || (a.code < b.code ? -1 : 1));
    const chance = met.length === 0 ? null : (member.topics.get(topicCode) ?? null);
    return { head, member, topic, chance, now, questions: rows, unmet: all.filter(({ stability }) => stability === null) };
  }

  async function saidOf({ questionId, revision, seed, region, given }: store.CellAnswer): Promise<string> {
    const bank = await questions.get(questionId, revision);
    return bank === null ? '' : givenWords(putQuestion(bank, seed, region).task, given);
  }

  return { view };
}
