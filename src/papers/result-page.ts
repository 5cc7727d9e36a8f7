import { dayWords } from '../core/calendar.js';
import { workingPart, tellTaleParts } from '../core/outcome-parts.js';
import { likelyMarks } from '../core/papers/error.js';
import { valueOfLetter } from '../core/papers/sheet.js';
import { answeredPart, givenWords, keyWords } from '../core/tasks/answered-part.js';
import { markGiven } from '../core/tasks/index.js';
import type { PractisePart } from '../core/page-parts.js';
import type { Person } from '../accounts/index.js';
import { cautionPart, questionTitleBlock } from '../study/index.js';
import type { CorrectedItem } from './correcting.js';
import { dayOf } from './days.js';
import type { ResultPage, ReviewPage } from './page-types.js';
import { numbersWords, sittingTitleBlock } from './sitting-page.js';
import type { SittingResult } from './sitting-service.js';

/** A paper after it was handed in: the mark, what it is worth, what to do next, and each question with its key. */

type ResultView = SittingResult;

interface Forms {
  csrf: string;
  round: () => string;
}

/** What came after the end, if the address says that something did. */
const lateWords = 'Your last choice came after the end, so it does not count. Everything that was saved before does.';

export function resultPage(view: ResultView, person: Person, forms: Forms, late: boolean): ResultPage {
  const { sitting, items } = view;
  const { questions, passMark } = sitting.blueprint;
  const right = sitting.right ?? 0;
  const passed = sitting.passed === true;
  return {
    view: 'papers/result',
    data: {
      title: sitting.title,
      verdict: { sign: passed ? 'yes' : 'no', word: `${right} of ${questions}: ${passed ? 'passed' : 'not passed'}` },
      lead: `${marginWords(right, passMark)}${blankWords(view)}`,
      late: late ? lateWords : null,
      remarked: remarkedWords(view, person),
      error: errorWords(right, questions, passMark),
      topics: topicRows(view),
      next: whatNext(view, forms),
      questions: items.map((item) => questionRow(item, view)),
      titleBlock: sittingTitleBlock({ sitting }, person),
    },
  };
}

function marginWords(right: number, passMark: number): string {
  const gap = right - passMark;
  if (gap === 0) return `Just what it takes: the pass mark is ${passMark}.`;
  return gap > 0 ? `${gap} more than the ${passMark} it takes.` : `${-gap} short of the ${passMark} it takes.`;
}

function blankWords({ items, sheet }: ResultView): string {
  const blank = items.filter(({ position }) => (sheet.find((row) => row.position === position)?.choice ?? null) === null).length;
  return blank === 0 ? '' : ` You left ${blank} blank; a guess costs nothing.`;
}

function errorWords(right: number, questions: number, passMark: number): string {
  if (questions < 2) return '';
  const { low, high } = likelyMarks(right, questions);
  const either = Math.abs(right - passMark) <= 1 ? ' So this one could have gone either way.' : '';
  return `Luck has a part in any paper. By this paper alone, you would get between ${low} and ${high} on about three of four others like it.${either}`;
}

function remarkedWords({ sitting, items }: ResultView, person: Person): string | null {
  if (sitting.remarkedAt === null) return null;
  const corrected = items.filter((item) => item.corrected).map(({ position }) => position);
  const which =
    corrected.length === 1
      ? `the key of question ${corrected[0]} was corrected`
      : `the keys of questions ${numbersWords(corrected)} were corrected`;
  return `Marked again on ${dayWords(dayOf(sitting.remarkedAt, person), 'short')}: ${which}. Before that you had ${sitting.firstRight ?? 0}.`;
}

const isRight = ({ sheet }: ResultView, position: number): boolean => sheet.find((row) => row.position === position)?.right === true;

function topicRows(view: ResultView): ResultPage['data']['topics'] {
  const rows = new Map<string, { topic: string; right: number; of: number }>();
  for (const { bank, position } of view.items) {
    const row = rows.get(bank.topic.code) ?? { topic: bank.topic.title, right: 0, of: 0 };
    row.of += 1;
    if (isRight(view, position)) row.right += 1;
    rows.set(bank.topic.code, row);
  }
  return [...rows.values()].sort((a, b) => a.right / a.of - b.right / b.of);
}

/** The objectives that were missed, those that matter most first. */
function whatNext(view: ResultView, forms: Forms): PractisePart[] {
  const missed = view.items.filter(({ position }) => !isRight(view, position));
  const objectives = new Map(missed.map(({ bank }) => [bank.objective.code, bank.objective]));
  return [...objectives.values()]
    .sort((a, b) => b.weight - a.weight)
    .slice(0, 3)
    .map(({ code, title }) => practise(view, code, `Go over ${code}: ${title}`, forms));
}

const practise = ({ sitting }: ResultView, objective: string, label: string, forms: Forms): PractisePart => ({
  csrf: forms.csrf,
  round: forms.round(),
  objective: `${sitting.pack}/${objective}`,
  label,
});

function questionRow({ position, bank }: CorrectedItem, view: ResultView): ResultPage['data']['questions'][number] {
  const choice = view.sheet.find((row) => row.position === position)?.choice ?? null;
  return {
    href: `/papers/sittings/${view.sitting.sittingId}/review/${position}`,
    position,
    objective: bank.objective.code,
    title: bank.objective.title,
    yours: choice ?? 'blank',
    how: choice === null ? 'No answer' : isRight(view, position) ? 'Right' : 'Not right',
  };
}

/** @returns null when the paper has no such question */
export function reviewPage(view: ResultView, forms: Forms, position: number): ReviewPage | null {
  const item = view.items.find((each) => each.position === position);
  if (item === undefined) return null;
  const { bank, task } = item;
  const choice = view.sheet.find((row) => row.position === position)?.choice ?? null;
  const given = choice === null ? null : valueOfLetter(task, choice);
  const root = `/papers/sittings/${view.sitting.sittingId}`;
  const compiled = bank.item.kind === 'numeric' ? bank.item.compiled(view.sitting.region) : null;
  const draw = task.kind === 'choice' ? task.draw : null;
  return {
    view: 'papers/review',
    data: {
      ...answeredPart(task, item.drawing, given ?? ''),
      title: view.sitting.title,
      place: `Question ${position} of ${view.items.length}`,
      stem: item.stem,
      verdict: verdictOf(item, choice, given),
      tellTales: draw === null || given === null ? [] : tellTaleParts(markGiven(task, given), false),
      explanation: bank.item.kind === 'fixed' ? bank.item.question.explanation : null,
      working: compiled === null || draw === null ? null : workingPart(compiled, draw),
      caution: cautionPart(item.caution),
      before: position > 1 ? `${root}/review/${position - 1}` : null,
      after: position < view.items.length ? `${root}/review/${position + 1}` : null,
      result: `${root}/result`,
      practise: practise(view, bank.objective.code, `Go over ${bank.objective.code} now`, forms),
      queryHref: `/queries/new?question=${bank.questionId}&revision=${bank.revision}&seed=${item.seed}&region=${view.sitting.region}`,
      titleBlock: questionTitleBlock(bank, item.seed),
    },
  };
}

function verdictOf({ task, corrected }: CorrectedItem, choice: string | null, given: string | null): ReviewPage['data']['verdict'] {
  const right = given !== null && markGiven(task, given)?.right === true;
  const fact = `${keyWords(task, right)}${corrected ? ' The key was corrected after the paper was made.' : ''}`;
  if (choice === null || given === null) return { sign: 'no', word: 'No answer.', fact, said: 'You left it blank.' };
  return { sign: right ? 'yes' : 'no', word: right ? 'Right.' : 'Not right.', fact, said: `${choice}: you ${givenWords(task, given)}.` };
}
