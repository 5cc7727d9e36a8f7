import type { Person } from '../accounts/index.js';
import type { Analysis, QuestionFigures } from '../core/analysis/analyse.js';
import { bandOf } from '../core/analysis/flags.js';
import { intervalWords, listed, shareWords, twoPlaces } from '../core/analysis/figure-words.js';
import { notesOf } from '../core/analysis/notes.js';
import { reliabilityWords } from '../core/analysis/reliability-words.js';
import { bandWords, chanceWords, judgeAll, type JudgedQuestion } from '../core/analysis/report.js';
import { dayNumber, dayWords } from '../core/calendar.js';
import { counted, shortened } from '../core/words.js';
import { field } from '../study/index.js';
import type { PlacedFault } from './table-csv.js';
import type { TableTyped } from './table-forms.js';
import type { TableFiguresPage, TablePage } from './table-page-types.js';
import type { TableView } from './table-service.js';

/** The form for a table of answers, and its figures. */

export function tablePage(person: Person, csrf: string, typed: TableTyped, faults: readonly PlacedFault[]): TablePage {
  const whyOf = (table: PlacedFault['table']): string | null => {
    const own = faults.filter((fault) => fault.table === table);
    return own.length === 0 ? null : own.length === 1 ? (own[0]?.why ?? null) : `${counted(own.length, 'thing')} to mend, listed above.`;
  };
  return {
    view: 'analysis/table',
    data: {
      csrf,
      answers: { value: typed.answers, why: whyOf('answers') },
      key: { value: typed.key, why: whyOf('key') },
      fault:
        faults.length === 0
          ? null
          : {
              why: `${counted(faults.length, 'thing')} to mend.`,
              findings: faults.map(({ table, line, why }) => ({ place: placeOf(table, line), words: why })),
            },
      titleBlock: [field('Tutor', person.displayName, 12, { name: true })],
    },
  };
}

const placeOf = (table: PlacedFault['table'], line: number | null): string =>
  `${table === 'key' ? 'The key' : 'The answers'}${line === null ? '' : `, line ${line}`}`;

export function tableFiguresPage({ analysis, now }: TableView, person: Person): TableFiguresPage {
  const judged = judgeAll(analysis);
  const { n, k } = analysis.paper;
  const full = bandOf(n) !== 'counts';
  const suspects = judged.filter(({ verdict }) => verdict.signs.some(({ severity }) => severity === 'look'));
  const few = judged.filter(({ verdict }) => verdict.tooFew).map(({ figures }) => shortened(figures.id));
  return {
    view: 'analysis/table-figures',
    data: {
      headline: headlineOf(suspects.length, few.length, k),
      lead: leadOf(analysis),
      band: bandWords(n),
      suspects: suspects.map((one) => suspectPart(one, full)),
      information: informationPart(judged),
      few: few.length === 0 ? null : `${listed(few)}.`,
      chance: chanceWords(analysis),
      full,
      questions: judged.map(questionPart),
      options: judged.filter(({ figures }) => figures.options.length > 0).map(({ figures }) => optionsPart(figures, full)),
      notes: full ? noteLines(analysis) : [],
      reliability: reliabilityWords(analysis.paper),
      titleBlock: [
        field('Tutor', person.displayName, 6, { name: true }),
        field('As of', dayWords(dayNumber(now.getTime(), person.timeZone)), 6),
        field('Candidates', String(n), 6),
        field('Questions', String(k), 6),
      ],
    },
  };
}

function headlineOf(suspects: number, few: number, k: number): string {
  if (suspects > 0) return `${suspects} of ${counted(k, 'question')} to look at`;
  return few === k ? 'Too few answers to tell' : 'No question shows a sign of trouble';
}

function leadOf({ paper: { n, k, mean, sd } }: Analysis): string {
  const spread = sd === null ? '' : `, standard deviation ${sd.toFixed(1)}`;
  return `${counted(n, 'candidate')}, ${counted(k, 'question')}. ${mean === null ? '' : `Mean ${mean.toFixed(1)} of ${k}${spread}.`}`.trim();
}

const figure = (value: number | null): string => (value === null ? '–' : twoPlaces(value));

const limitsOf = ({ facilityInterval }: QuestionFigures): string => (facilityInterval === null ? '–' : shareWords(facilityInterval));

function restOf({ itemRest, itemRestInterval }: QuestionFigures): string {
  return itemRestInterval === null ? figure(itemRest) : `${figure(itemRest)} (${intervalWords(itemRestInterval)})`;
}

/** Only what is grave: the rest is no reason to look, and stands below. */
function suspectPart({ figures, verdict }: JudgedQuestion, full: boolean): TableFiguresPage['data']['suspects'][number] {
  const rest = full && figures.itemRest !== null ? ` Correlation with the rest: ${restOf(figures)}.` : '';
  return {
    id: shortened(figures.id),
    figures: `${figures.right} of ${figures.n} right, which goes with ${limitsOf(figures)}.${rest}`,
    signs: verdict.signs.filter(({ severity }) => severity === 'look').map(({ text, todo }) => ({ text, todo })),
  };
}

/** By what there is to do, since many questions may share it. What nobody has chosen yet is seen among the options. */
function informationPart(judged: readonly JudgedQuestion[]): TableFiguresPage['data']['information'] {
  const parts = new Map<string, { id: string; text: string }[]>();
  for (const { figures, verdict } of judged)
    for (const { id, severity, text, todo } of verdict.signs)
      if (severity === 'information' && id !== 'not-chosen')
        parts.set(todo, [...(parts.get(todo) ?? []), { id: shortened(figures.id), text }]);
  return [...parts].map(([todo, seen]) => ({ todo, seen }));
}

function questionPart({ figures, verdict }: JudgedQuestion): TableFiguresPage['data']['questions'][number] {
  const { quality } = verdict;
  const word = quality === null ? '' : `, ${quality.word}${quality.provisional ? ' for now' : ''}`;
  return {
    id: shortened(figures.id),
    right: `${figures.right} of ${figures.n}`,
    limits: limitsOf(figures),
    rest: restOf(figures),
    total: figure(figures.itemTotal),
    upperLower: `${figure(figures.upperLower27)}${word}`,
    dropped: figure(figures.alphaIfDropped),
    mark: verdict.signs.some(({ severity }) => severity === 'look') ? 'look' : verdict.tooFew ? 'too few' : '',
  };
}

const optionsPart = ({ id, key, options }: QuestionFigures, full: boolean): TableFiguresPage['data']['options'][number] => ({
  id: shortened(id),
  choices: options.map(({ option, count, itemRest }) => ({
    option: option ?? 'blank',
    figures: full && itemRest !== null ? `${count} (${twoPlaces(itemRest)})` : String(count),
    key: option !== null && option === key,
  })),
});

/** A count of nought says by itself why its option has no correlation. */
const noteLines = (analysis: Analysis): string[] =>
  notesOf(analysis)
    .filter(({ options }) => options === null)
    .map(({ question, values, why }) => `${question === null ? 'The paper' : shortened(question)}, ${listed(values.map(nameOf))}: ${why}.`);

const names: Readonly<Record<string, string>> = {
  mean: 'mean',
  sd: 'standard deviation',
  kr20: 'KR-20',
  sem: 'standard error of measurement',
  facility: 'share right',
  facilityLow: 'its lower limit',
  facilityHigh: 'its upper limit',
  itemTotal: 'correlation with the total',
  itemRest: 'correlation with the rest',
  upperLower27: 'upper-lower index',
  alphaIfDropped: 'KR-20 without it',
};

const nameOf = (value: string): string => names[value] ?? value;
