import type { Person } from '../accounts/index.js';
import { isoDay, shortDate } from '../core/calendar.js';
import { keyLetter, lettersOf } from '../core/papers/sheet.js';
import type { Region } from '../core/syllabus.js';
import { drawingView } from '../core/tasks/asked-part.js';
import { letterOf } from '../core/tasks/task.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import { dayOf } from './days.js';
import type { PrintedKey, PrintedPaper, PrintedSheet, PrintPage, PrintWish } from './print-page-types.js';
import type { PaperHead } from './rows.js';
import type { SheetItem } from './sheet-item.js';

/** A class paper as it is printed: papers with their answer sheets, answer sheets alone, or the marking key. */

export interface PrintedVersion {
  version: number;
  items: readonly SheetItem[];
}

const regionWords: Readonly<Record<Region, string>> = { uk: 'UK 230 V', eu: 'Europe 230 V', na: 'North America 120 V' };

const whatWords: Readonly<Record<PrintWish['what'], string>> = {
  papers: 'Papers, each with its answer sheet',
  sheets: 'Answer sheets only',
  key: 'Marking key, for the tutor',
};

const leads: Readonly<Record<PrintWish['what'], string>> = {
  papers: 'Each version begins on a new sheet: its questions first, then its answer sheet. Nothing on them tells the key.',
  sheets: 'One answer sheet for each version, with the version printed in. Give each candidate the one of their paper.',
  key: 'For the tutor: print it by itself, and keep it apart from the papers.',
};

/** Letters up to which two options stand side by side. */
const shortOption = 38;
/** Rows of an answer sheet that fit one sheet of paper at their full size. */
const mostRows = 26;
/** Versions that the widest sheet of the key takes side by side. */
const abreast = 12;

export function printPage(head: PaperHead, made: readonly PrintedVersion[], wish: PrintWish, person: Pick<Person, 'timeZone'>): PrintPage {
  const { what, size, large } = wish;
  const numbers = head.versions < 2 ? [] : Array.from({ length: head.versions }, (_, index) => index + 1);
  const choices = (chosen: number) => numbers.map((number) => choice(String(number), String(number), String(chosen)));
  return {
    view: 'papers/print',
    data: {
      className: head.className ?? '',
      title: head.title,
      back: `/class-papers/${head.paperId}`,
      action: `/class-papers/${head.paperId}/print`,
      lead: leads[what],
      whats: Object.entries(whatWords).map(([value, text]) => choice(value, text, what)),
      sizes: [choice('a4', 'A4', size), choice('letter', 'US Letter', size)],
      large,
      from: choices(wish.from),
      to: choices(wish.to),
      letter: size === 'letter',
      oneSet: what === 'key' || (what === 'papers' && made.length === 1),
      papers: what === 'papers' ? made.map((version) => printedPaper(head, version)) : [],
      sheets: what === 'sheets' ? made.map((version) => printedSheet(head, version)) : [],
      key: what === 'key' ? printedKey(head, made) : null,
      titleBlock: [
        field('Paper', head.title, 6, { name: true }),
        field('Class', head.className ?? '', 6),
        field('Pack', `${head.packTitle} ${head.packVersion}`, 6),
        field('Versions', String(head.versions), 2),
        field('Made on', shortDate(isoDay(dayOf(head.madeAt, person))), 4),
      ],
    },
  };
}

const choice = (value: string, text: string, chosen: string) => ({ value, text, chosen: value === chosen });

function printedPaper(head: PaperHead, made: PrintedVersion): PrintedPaper {
  const { questions, minutes, passMark } = head.blueprint;
  return {
    version: made.version,
    title: head.title,
    className: head.className ?? '',
    facts: `${counted(questions, 'question')}, ${counted(minutes, 'minute')}, pass mark ${passMark}, ${regionWords[head.region]}`,
    questions: made.items.map((item) => printedQuestion(item, made.version)),
    source: `Questions from the pack ${head.packTitle} ${head.packVersion}, licence ${made.items[0]?.bank.pack.licence ?? 'of the pack'}.`,
    sheet: printedSheet(head, made),
  };
}

/** Only what is read: the names under which options are kept stay here, and so does which of them is the key. */
function printedQuestion({ position, stem, task, drawing }: SheetItem, version: number): PrintedPaper['questions'][number] {
  // Several versions show the same drawing on one page, so each has ids of its own.
  const prefix = `v${version}-q${position}`;
  const shown = task.kind === 'choice' ? task.options : task.places;
  const options = shown.map(({ text }, index) => ({ letter: letterOf(index), text }));
  const pairs = options.every(({ text }) => text.length <= shortOption);
  const base = { number: position, stem, pairs, options };
  if (task.kind === 'choice') return { ...base, drawing: drawing === null ? null : drawingView(drawing, true, [], prefix), lead: null };
  const marks = task.places.map(({ part }, index) => ({ letter: letterOf(index), at: part.at, look: 'plain' as const, chooses: null }));
  return { ...base, drawing: drawingView(task.drawing, false, marks, prefix), lead: 'The letters on the drawing mark:' };
}

function printedSheet(head: PaperHead, { version, items }: PrintedVersion): PrintedSheet {
  return {
    version,
    title: head.title,
    className: head.className ?? '',
    rows: items.map(({ position, task }) => ({ number: position, letters: lettersOf(task) })),
    questions: items.length,
    dense: items.length > mostRows,
  };
}

function printedKey(head: PaperHead, made: readonly PrintedVersion[]): PrintedKey {
  const { questions, passMark } = head.blueprint;
  const groups = made.length < 2 ? [] : made.flatMap((_, index) => (index % abreast === 0 ? [made.slice(index, index + abreast)] : []));
  return {
    title: head.title,
    className: head.className ?? '',
    facts: `Pack ${head.packTitle} ${head.packVersion}, ${regionWords[head.region]}. To pass: ${passMark} of ${questions}.`,
    together: groups.map((group) => ({
      versions: group.map(({ version }) => version),
      rows: (group[0]?.items ?? []).map(({ position }, index) => ({
        number: position,
        letters: group.map(({ items }) => letterAt(items, index)),
      })),
    })),
    versions: made.map(({ version, items }) => ({
      version,
      rows: items.map(({ position, task, bank }) => ({ number: position, letter: keyLetter(task), objective: bank.objective.code })),
    })),
  };
}

function letterAt(items: readonly SheetItem[], index: number): string {
  const item = items[index];
  return item === undefined ? '' : keyLetter(item.task);
}
