import { commonMistakes, type Mistake } from '../core/classes/mistakes.js';
import type { QuestionsService } from '../questions/index.js';
import { putQuestion } from '../study/index.js';
import type { LastAnswerRow } from './plan-store.js';

/** The misconceptions behind the last answers of a class, in words. */

const shown = 3;

interface Named {
  key: string;
  text: string;
}

/** @returns those of most people, each with its words */
export async function mistakesOf(questions: QuestionsService, answers: readonly LastAnswerRow[]): Promise<(Mistake & { text: string })[]> {
  // Many made the same mistake, and putting a question costs as much as all else here.
  const found = new Map<string, Promise<Named | null>>();
  const once = (answer: LastAnswerRow): Promise<Named | null> => {
    const key = JSON.stringify([answer.questionId, answer.revision, answer.region, answer.right, answer.given, answer.tellTale]);
    const held = found.get(key) ?? namedMistake(questions, answer);
    found.set(key, held);
    return held;
  };
  const named = await Promise.all(answers.map(async (answer) => ({ answer, mistake: await once(answer) })));
  const texts = new Map(named.map(({ answer, mistake }) => [`${answer.questionId} ${mistake?.key}`, mistake?.text ?? '']));
  const common = commonMistakes(
    named.map(({ answer: { personId, questionId, objective, right, certainty }, mistake }) => {
      return { personId, questionId, objective, right, sure: certainty === 'sure', mistake: mistake?.key ?? null };
    }),
  );
  return common.slice(0, shown).map((mistake) => ({ ...mistake, text: texts.get(`${mistake.questionId} ${mistake.mistake}`) ?? '' }));
}

/** What a wrong answer shows: the option that was chosen, or the mistake that leads to the number; null where it shows neither. */
async function namedMistake(questions: QuestionsService, answer: LastAnswerRow): Promise<Named | null> {
  const { questionId, revision, region, seed, given, right, tellTale } = answer;
  if (right || given === '') return null;
  const bank = await questions.get(questionId, revision);
  if (bank === null) return null;
  if (bank.item.kind === 'numeric') {
    const tale = bank.item.compiled(region)?.tellTales.find(({ name }) => name === tellTale);
    return tale === undefined ? null : { key: tale.name, text: tale.label };
  }
  const { task } = putQuestion(bank, seed, region);
  if (task.kind === 'choice') {
    const option = task.options.find(({ value }) => value === given);
    return option === undefined ? null : { key: option.text, text: `“${option.text}”` };
  }
  if (task.kind !== 'place') return null;
  const place = task.places.find(({ value }) => value === given);
  return place === undefined ? null : { key: place.part.name, text: `the place “${place.part.name}”` };
}
