import type { Draw } from '../core/families/draw.js';
import { tellTaleParts, workingPart } from '../core/outcome-parts.js';
import { answeredPart, givenWords, keyWords, scoreWords } from '../core/tasks/answered-part.js';
import { markGiven } from '../core/tasks/index.js';
import type { Task } from '../core/tasks/task.js';
import { readQuantity } from '../../shared/numeric-answer/parse.js';
import type { RecordedAnswer } from '../answers/index.js';
import type { OutcomePage } from './page-types.js';
import { backWords, cautionPart, isPartly, questionTitleBlock } from './pages.js';
import type { AskedItem } from './put-question.js';
import type { OutcomeView } from './service.js';

/** The page after an answer: right or wrong, why, the working, the caution, what comes next. */

const sureWords = { sure: 'were sure', fairly: 'were fairly sure', guessing: 'were guessing', unsaid: '' } as const;

export function outcomePage({ answer, item, today, settings }: OutcomeView): OutcomePage {
  const retry = answer.freshToken !== null && !answer.freshAnswered;
  const { put, bank } = item;
  return {
    view: 'study/outcome',
    data: {
      topicTitle: bank.topic.title,
      position: item.place,
      total: item.total,
      stem: put.stem,
      verdict: verdict(answer, item, retry),
      tellTales: answer.right || !hasDraw(put.task) ? [] : tellTaleParts(markGiven(put.task, answer.given), retry),
      retry,
      ...answeredPart(put.task, put.drawing, answer.given),
      explanation: bank.item.kind === 'fixed' ? bank.item.question.explanation : null,
      working: retry || put.compiled === null || !hasDraw(put.task) ? null : workingPart(put.compiled, put.task.draw),
      caution: cautionPart(put.caution),
      queryHref: `/queries/new?question=${bank.questionId}&revision=${bank.revision}&seed=${item.seed}&region=${item.region}`,
      next: next(answer, retry, item.place === item.total, backWords(answer, settings, today)),
      titleBlock: questionTitleBlock(bank, item.seed),
    },
  };
}

const hasDraw = (task: Task): task is Task & { draw: Draw } => (task.kind === 'choice' || task.kind === 'number') && task.draw !== null;

function verdict(answer: RecordedAnswer, item: AskedItem, retry: boolean): OutcomePage['data']['verdict'] {
  const { task } = item.put;
  const sure = answer.given === '' || answer.certainty === 'unsaid' ? '' : ` and ${sureWords[answer.certainty]}`;
  const said = `You ${givenWords(task, answer.given)}${readAs(answer.given, task)}${sure}.`;
  const score = scoreWords(task, answer.score);
  if (retry)
    return { sign: 'no', word: 'Not right.', fact: 'Try it once more with fresh numbers, before the working is shown.', said, score };
  const fact = keyWords(task, answer.right);
  if (!answer.right) return { sign: 'no', word: isPartly(answer.score) ? 'Partly right.' : 'Not right.', fact, said, score };
  const guessed = answer.certainty === 'guessing';
  return { sign: guessed ? 'guess' : 'yes', word: guessed ? 'Right, by a guess.' : 'Right.', fact, said, score };
}

/** What a typed number was taken for, where it was not typed just so. */
function readAs(given: string, task: Task): string {
  if (task.kind !== 'number') return '';
  const reading = readQuantity(given, task.draw.key.unit);
  if (!reading.understood) return '';
  const plain = `${reading.value} ${reading.unit}`.trim();
  return plain === given.trim() ? '' : `, read as ${plain},`;
}

function next(answer: RecordedAnswer, retry: boolean, last: boolean, back: string): OutcomePage['data']['next'] {
  const href = `/study/rounds/${answer.roundId ?? ''}`;
  if (retry) return { href, label: 'Fresh numbers', note: 'The same question with other numbers.' };
  return { href, label: last ? 'See how it went' : 'Next question', note: back === 'soon' ? '' : `This one comes back ${back}.` };
}
