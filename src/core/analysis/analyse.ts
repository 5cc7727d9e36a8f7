import { wilsonInterval } from '../outlook/wilson.js';
import { fisherInterval, pearson, type Interval } from './correlation.js';
import { alphaOf, paperFigures, type PaperFigures } from './reliability.js';
import { marksOf, totalsOf, type AskedQuestion, type Responses } from './responses.js';
import { scoreGroups, upperLowerIndex, type ScoreGroups } from './upper-lower.js';

export type { Interval };

/** Classical item analysis: every figure of a table of answers. What cannot be told is null; `notes.ts` says why. */

export interface OptionFigures {
  /** Null for a blank. */
  option: string | null;
  count: number;
  /** Of having chosen it with the total. */
  itemTotal: number | null;
  /** Of having chosen it with the total less this question's mark. */
  itemRest: number | null;
  itemRestInterval: Interval | null;
}

export interface QuestionFigures {
  id: string;
  /** The right option; null where the table says only right or wrong. */
  key: string | null;
  /** Candidates. */
  n: number;
  right: number;
  /** The share that had it right. */
  facility: number | null;
  /** Wilson's 95 %. */
  facilityInterval: Interval | null;
  itemTotal: number | null;
  /** With the total of the other questions. */
  itemRest: number | null;
  /** Fisher's 95 %. */
  itemRestInterval: Interval | null;
  upperLower27: number | null;
  alphaIfDropped: number | null;
  /** As the key lists them, then the blank; none where the table says only right or wrong. */
  options: OptionFigures[];
}

export interface Analysis {
  paper: PaperFigures;
  questions: QuestionFigures[];
}

export function analyse(responses: Responses): Analysis {
  const marks = marksOf(responses);
  const totals = totalsOf(marks, responses.rows.length);
  const rights = marks.map(sumOf);
  const whole: Whole = { rights, totals, groups: scoreGroups(totals) };
  return {
    paper: paperFigures(rights, totals),
    questions: responses.questions.map((question, place) =>
      questionFigures(
        question,
        place,
        marks[place] as number[],
        responses.rows.map((row) => row[place] ?? null),
        whole,
      ),
    ),
  };
}

interface Whole {
  rights: readonly number[];
  totals: readonly number[];
  groups: ScoreGroups | null;
}

function questionFigures(
  { id, key }: AskedQuestion,
  place: number,
  marks: readonly number[],
  choices: readonly (string | null)[],
  { rights, totals, groups }: Whole,
): QuestionFigures {
  const n = marks.length;
  const right = rights[place] as number;
  const rest = totals.map((total, candidate) => total - (marks[candidate] as number));
  const itemRest = pearson(marks, rest);
  return {
    id,
    key: key === null ? null : key.right,
    n,
    right,
    facility: n === 0 ? null : right / n,
    facilityInterval: wilsonInterval(right, n),
    itemTotal: pearson(marks, totals),
    itemRest,
    itemRestInterval: fisherInterval(itemRest, n),
    upperLower27: groups === null ? null : upperLowerIndex(marks, groups),
    // What is left of two questions is one, which has no such figure.
    alphaIfDropped: alphaOf(
      rights.filter((_, other) => other !== place),
      rest,
    ),
    options: key === null ? [] : [...key.options, null].map((option) => optionFigures(option, choices, totals, rest)),
  };
}

function optionFigures(
  option: string | null,
  choices: readonly (string | null)[],
  totals: readonly number[],
  rest: readonly number[],
): OptionFigures {
  const chosen = choices.map((choice) => (choice === option ? 1 : 0));
  const itemRest = pearson(chosen, rest);
  return {
    option,
    count: sumOf(chosen),
    itemTotal: pearson(chosen, totals),
    itemRest,
    itemRestInterval: fisherInterval(itemRest, choices.length),
  };
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
