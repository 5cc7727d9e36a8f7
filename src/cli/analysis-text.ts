import type { Analysis, OptionFigures, QuestionFigures } from '../core/analysis/analyse.js';
import { bandOf } from '../core/analysis/flags.js';
import { intervalWords, listed, shareWords, twoPlaces } from '../core/analysis/figure-words.js';
import { notesOf, type Note } from '../core/analysis/notes.js';
import { reliabilityWords } from '../core/analysis/reliability-words.js';
import { bandWords, chanceWords, judgeAll, type JudgedQuestion } from '../core/analysis/report.js';
import { counted } from '../core/words.js';

/** An analysis as a person reads it in a terminal. */

export function analysisText(analysis: Analysis): string {
  const judged = judgeAll(analysis);
  const counts = bandOf(analysis.paper.n) === 'counts';
  const parts = [
    paperLines(analysis),
    columns(counts ? countRows(judged) : questionRows(judged)),
    optionLines(analysis, counts),
    signLines(judged),
    [bandWords(analysis.paper.n), chanceWords(analysis) ?? ''].filter((line) => line !== ''),
    counts ? ['With --json every figure is given, whatever it is worth.'] : noteLines(notesOf(analysis)),
  ];
  return parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function paperLines({ paper }: Analysis): string[] {
  const { n, k, mean, sd } = paper;
  const { kr20, kr20Words, sem, semWords } = reliabilityWords(paper);
  const marks = mean === null ? '' : ` Mean ${twoPlaces(mean)}${sd === null ? '' : `, standard deviation ${twoPlaces(sd)}`}.`;
  return [
    `${counted(n, 'candidate')}, ${counted(k, 'question')}.${marks}`,
    `Reliability (KR-20): ${kr20 === null ? '' : `${kr20}. `}${kr20Words}`,
    ...(sem === null ? [] : [`Standard error of measurement: ${sem}. ${semWords}`]),
  ];
}

const facilityCells = ({ id, right, n, facilityInterval }: QuestionFigures): string[] => [
  id,
  `${right} of ${n}`,
  facilityInterval === null ? '–' : shareWords(facilityInterval),
];

const countRows = (judged: readonly JudgedQuestion[]): string[][] => [
  ['question', 'right', '95 %'],
  ...judged.map(({ figures }) => facilityCells(figures)),
];

function questionRows(judged: readonly JudgedQuestion[]): string[][] {
  const header = ['question', 'right', '95 %', 'with total', 'with rest', '95 %', 'upper-lower', 'KR-20 without'];
  return [
    header,
    ...judged.map(({ figures, verdict: { quality } }) => [
      ...facilityCells(figures),
      figure(figures.itemTotal),
      figure(figures.itemRest),
      figures.itemRestInterval === null ? '–' : intervalWords(figures.itemRestInterval),
      `${figure(figures.upperLower27)}${quality === null ? '' : ` ${quality.word}`}`,
      figure(figures.alphaIfDropped),
    ]),
  ];
}

const figure = (value: number | null): string => (value === null ? '–' : twoPlaces(value));

/** Each option with its count and, where that may be shown, its correlation with the rest; the key has a star. */
function optionLines({ questions }: Analysis, counts: boolean): string[] {
  const asked = questions.filter(({ options }) => options.length > 0);
  if (asked.length === 0) return [];
  const one = ({ option, count, itemRest }: OptionFigures, key: string | null): string =>
    `${option ?? 'blank'}${option !== null && option === key ? '*' : ''} ${count}${counts || itemRest === null ? '' : ` (${twoPlaces(itemRest)})`}`;
  return [
    `What was chosen${counts ? '' : ', with its correlation with the rest'} (* is the key)`,
    ...columns(asked.map(({ id, options, key }) => [id, options.map((option) => one(option, key)).join(', ')])),
  ];
}

function signLines(judged: readonly JudgedQuestion[]): string[] {
  const looks = judged.flatMap(({ figures, verdict }) =>
    verdict.signs.filter(({ severity }) => severity === 'look').map(({ text, todo }) => `${figures.id}: ${text}\n  ${todo}`),
  );
  const few = judged.filter(({ verdict }) => verdict.tooFew).map(({ figures }) => figures.id);
  return [
    looks.length === 0 ? 'No question shows a sign of trouble.' : 'To look at',
    ...looks,
    ...(few.length === 0 ? [] : [`Too few answers to tell: ${listed(few)}.`]),
  ];
}

/** An option that nobody chose needs no note: its count says so. */
function noteLines(notes: readonly Note[]): string[] {
  const said = notes.filter(({ options }) => options === null);
  return said.length === 0
    ? []
    : ['Not given (–)', ...said.map(({ question, values, why }) => `${question ?? 'paper'}: ${values.join(' and ')}, since ${why}`)];
}

/** Cells below each other, two spaces between the columns. */
function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, place) => Math.max(...rows.map((row) => (row[place] ?? '').length)));
  return rows.map((row) =>
    row
      .map((cell, place) => cell.padEnd(widths[place] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
