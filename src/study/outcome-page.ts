import { whenWords } from '../core/calendar.js';
import { markNumber, markOption } from '../core/marking.js';
import { tellTaleParts, workingPart } from '../core/outcome-parts.js';
import { readQuantity } from '../../shared/numeric-answer/parse.js';
import type { RecordedAnswer } from '../answers/index.js';
import type { OutcomePage } from './page-types.js';
import { cautionPart, letterOf, questionTitleBlock } from './pages.js';
import type { AskedItem } from './service.js';

/** The page after an answer: right or wrong, why, the working, the caution, what comes next. */

export interface OutcomeView {
  answer: RecordedAnswer;
  item: AskedItem;
  today: number;
}

const sureWords = { sure: 'were sure', fairly: 'were fairly sure', guessing: 'were guessing' } as const;

export function outcomePage({ answer, item, today }: OutcomeView): OutcomePage {
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
      tellTales: tellTales(answer, item, retry),
      retry,
      options:
        put.options?.map((option, index) => ({
          letter: letterOf(index),
          text: option.text,
          key: option.key,
          yours: option.value === answer.given,
          why: option.why,
        })) ?? null,
      explanation: bank.item.kind === 'single' ? bank.item.question.explanation : null,
      working: retry ? null : working(item),
      caution: cautionPart(put.caution),
      next: next(answer, retry, today, item.place === item.total),
      titleBlock: questionTitleBlock(bank, item.seed),
    },
  };
}

function verdict(answer: RecordedAnswer, item: AskedItem, retry: boolean): OutcomePage['data']['verdict'] {
  const { put } = item;
  const key = put.options?.find((option) => option.key)?.text ?? put.draw?.answerText ?? '';
  const given = put.options?.find((option) => option.value === answer.given)?.text ?? answer.given;
  const said = `You ${put.options === null ? 'wrote' : 'chose'} “${given}”${readAs(answer.given, item)} and ${sureWords[answer.certainty]}.`;
  if (retry) return { sign: 'no', word: 'Not right.', fact: 'Try it once more with fresh numbers, before the working is shown.', said };
  const fact = put.options === null ? `The answer is ${key}.` : sentence(key);
  if (!answer.right) return { sign: 'no', word: 'Not right.', fact, said };
  const guessed = answer.certainty === 'guessing';
  return { sign: guessed ? 'guess' : 'yes', word: guessed ? 'Right, by a guess.' : 'Right.', fact, said };
}

/** What a typed number was taken for, where it was not typed just so. */
function readAs(given: string, { put }: AskedItem): string {
  if (put.options !== null || put.draw === null) return '';
  const reading = readQuantity(given, put.draw.key.unit);
  if (!reading.understood) return '';
  const plain = `${reading.value} ${reading.unit}`.trim();
  return plain === given.trim() ? '' : `, read as ${plain},`;
}

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

function tellTales(answer: RecordedAnswer, item: AskedItem, retry: boolean): OutcomePage['data']['tellTales'] {
  const { put } = item;
  if (answer.right || put.draw === null) return [];
  return tellTaleParts(put.options === null ? markTyped(answer.given, item) : markOption(put.options, answer.given, put.draw), retry);
}

function markTyped(given: string, item: AskedItem) {
  const { draw } = item.put;
  if (draw === null) return null;
  const reading = readQuantity(given, draw.key.unit);
  return reading.understood ? markNumber(draw, reading.value) : null;
}

function working(item: AskedItem): OutcomePage['data']['working'] {
  const { draw, compiled } = item.put;
  if (draw === null || compiled === null) return null;
  return workingPart(compiled, draw);
}

function next(answer: RecordedAnswer, retry: boolean, today: number, last: boolean): OutcomePage['data']['next'] {
  const href = `/study/rounds/${answer.roundId ?? ''}`;
  if (retry) return { href, label: 'Fresh numbers', note: 'The same question with other numbers.' };
  const back = answer.dueDayAfter === null ? '' : `This one comes back ${whenWords(answer.dueDayAfter, today)}.`;
  return { href, label: last ? 'See how it went' : 'Next question', note: back };
}
