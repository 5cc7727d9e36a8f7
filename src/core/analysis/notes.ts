import type { Analysis, OptionFigures, QuestionFigures } from './analyse.js';
import type { PaperFigures } from './reliability.js';

/** Why a figure is null, as `rungwise analyse --json` and the page say it. */

export interface Note {
  /** Null for the paper. */
  question: string | null;
  /** The options it is about, null for the blank; null for the question as a whole. */
  options: (string | null)[] | null;
  /** Names of the figures that are null. */
  values: string[];
  why: string;
}

const nobody = 'there are no candidates';
const alone = 'it takes two candidates or more';
const sameTotals = 'all totals are the same';

/** A note for every null of the figures, and none for anything else. */
export const notesOf = ({ paper, questions }: Analysis): Note[] => [
  ...paperNotes(paper),
  ...questions.flatMap((question) => [...questionNotes(question, paper), ...optionNotes(question, paper)]),
];

function paperNotes(paper: PaperFigures): Note[] {
  const { n, k } = paper;
  const about = (values: (keyof PaperFigures)[], why: string): Note[] => {
    const missing = values.filter((value) => paper[value] === null);
    return missing.length === 0 ? [] : [{ question: null, options: null, values: missing, why }];
  };
  return [
    ...about(['mean'], nobody),
    ...about(['sd'], n === 0 ? nobody : alone),
    ...about(['kr20', 'sem'], n < 2 ? alone : k < 2 ? 'it takes two questions or more' : sameTotals),
  ];
}

function questionNotes(question: QuestionFigures, { n, k }: PaperFigures): Note[] {
  const about = (values: (keyof QuestionFigures)[], why: string, named: string[] = values): Note[] =>
    values.some((value) => question[value] === null) ? [{ question: question.id, options: null, values: named, why }] : [];
  const constant = n < 2 ? alone : question.right === n ? 'everybody is right' : question.right === 0 ? 'nobody is right' : null;
  return [
    ...about(['facility', 'facilityInterval'], nobody, ['facility', 'facilityLow', 'facilityHigh']),
    ...(constant === null
      ? [...about(['itemTotal'], sameTotals), ...about(['itemRest'], restWords(k))]
      : about(['itemTotal', 'itemRest'], constant)),
    ...about(['upperLower27'], n === 0 ? nobody : 'the upper and the lower group are the same people'),
    ...about(
      ['alphaIfDropped'],
      n < 2 ? alone : k < 3 ? 'it takes three questions or more' : 'without this question all totals are the same',
    ),
  ];
}

const restWords = (k: number): string =>
  k < 2 ? 'there is no other question' : 'the marks on the other questions sum to the same for everybody';

/** Options with the same figures missing for the same reason stand together. */
function optionNotes({ id, options }: QuestionFigures, { n, k }: PaperFigures): Note[] {
  const notes = new Map<string, Note>();
  for (const option of options) {
    const constant = n < 2 ? alone : constantWords(option, n);
    for (const [value, otherwise] of [
      ['itemTotal', sameTotals],
      ['itemRest', restWords(k)],
    ] as const) {
      if (option[value] !== null) continue;
      const why = constant ?? otherwise;
      const note = notes.get(why) ?? { question: id, options: [], values: [], why };
      notes.set(why, note);
      if (note.options?.includes(option.option) === false) note.options.push(option.option);
      if (!note.values.includes(value)) note.values.push(value);
    }
  }
  return [...notes.values()];
}

function constantWords({ option, count }: OptionFigures, n: number): string | null {
  if (count === 0) return option === null ? 'nobody left it blank' : 'nobody chose it';
  if (count === n) return option === null ? 'everybody left it blank' : 'everybody chose it';
  return null;
}
