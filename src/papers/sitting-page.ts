import { listWords } from '../core/tasks/task.js';
import { minutesLeft } from '../core/papers/time.js';
import { counted } from '../core/words.js';
import type { Person } from '../accounts/index.js';
import { cautionPart, field } from '../study/index.js';
import type { AnswerSheetPart, HandInPage, SheetQuestionPart, SittingPage, TimePart } from './page-types.js';
import type { SheetRow } from './rows.js';
import type { SheetItem } from './sheet-item.js';
import { optionsOf, sheetDrawing } from './sheet-part.js';
import type { SittingView } from './sitting-service.js';

/** A paper while it is sat. Nothing on these pages tells a key: options go by their letters and nothing else. */

const base = (sittingId: string): string => `/papers/sittings/${sittingId}`;

/** @param place the question shown; null shows them all */
export function sittingPage(view: SittingView, person: Person, csrf: string, place: number | null): SittingPage {
  const { sitting, items } = view;
  const root = base(sitting.sittingId);
  const last = items.length;
  const shown = place === null ? items : items.filter(({ position }) => position === place);
  return {
    view: 'papers/sitting',
    data: {
      title: sitting.title,
      place: place === null ? `${last} questions` : `Question ${place} of ${last}`,
      csrf,
      action: `${root}/save`,
      time: timePart(view, person),
      all: place === null,
      questions: shown.map((item) =>
        questionPart(
          item,
          view.sheet.find(({ position }) => position === item.position),
          place !== null,
        ),
      ),
      next:
        place === null || place === last
          ? { go: 'hand-in', label: 'Save, and look over it before handing in' }
          : { go: String(place + 1), label: `Save, go to ${place + 1}` },
      before: place === null || place === 1 ? null : { go: String(place - 1), label: `Back to ${place - 1}` },
      sheet: sheetPart(view, place),
      other:
        place === null
          ? { href: `${root}/1`, label: 'One question at a time' }
          : { href: `${root}/all`, label: 'All questions on one page' },
      handIn: `${root}/hand-in`,
      caution: cautionPart(items[0]?.bank.caution('general') ?? null),
      titleBlock: sittingTitleBlock(view, person),
    },
  };
}

function questionPart(item: SheetItem, row: SheetRow | undefined, alone: boolean): SheetQuestionPart {
  const { position, stem } = item;
  const choice = row?.choice ?? '';
  const idOf = (letter: string): string => `c${position}-${letter}`;
  return {
    position,
    alone,
    stem,
    drawing: sheetDrawing(item, `q${position}`, idOf),
    options: optionsOf(item).map(({ letter, text }) => ({ id: idOf(letter), letter, text, chosen: choice === letter })),
    was: choice,
    again: row?.again === true,
  };
}

function sheetPart({ sitting, items, sheet }: SittingView, place: number | null): AnswerSheetPart {
  const rows = new Map(sheet.map((row) => [row.position, row]));
  const cells = items.map(({ position }) => {
    const row = rows.get(position);
    const choice = row?.choice ?? '';
    const words = `${choice === '' ? 'blank' : `answered ${choice}`}${row?.again === true ? ', look again' : ''}`;
    const href = place === null ? `#q${position}` : `${base(sitting.sittingId)}/${position}`;
    return { position, href, choice, words, again: row?.again === true, current: position === place };
  });
  const saved = cells.filter(({ choice }) => choice !== '').length;
  return { saved, open: cells.length - saved, cells };
}

/** In the candidate's own time zone. */
const clockWords = (at: Date, timeZone: string): string => at.toLocaleTimeString('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' });

export function timePart({ sitting, now }: SittingView, person: Person): TimePart {
  const [start, end] = [sitting.startedAt ?? now, sitting.deadlineAt ?? now];
  const whole = Math.max(1, end.getTime() - start.getTime());
  const left = minutesLeft(end, now.getTime());
  return {
    left: `${counted(left, 'minute')} left`,
    seconds: Math.max(0, Math.floor((end.getTime() - now.getTime()) / 1000)),
    until: `Hand in by ${clockWords(end, person.timeZone)}. The clock runs on even if you close the page.`,
    gone: (Math.min(1, (now.getTime() - start.getTime()) / whole) * 100).toFixed(1),
    ticks: ticksOf(whole / 60_000),
    href: base(sitting.sittingId),
  };
}

/** Whole minutes, evenly apart, no more than fit a phone. */
function ticksOf(minutes: number): TimePart['ticks'] {
  const step = [1, 2, 5, 10, 15, 20, 30, 60].find((each) => minutes % each === 0 && minutes / each <= 7) ?? minutes / 4;
  return Array.from({ length: Math.round(minutes / step) + 1 }, (_, index) => ({
    at: ((index * step * 100) / minutes).toFixed(2),
    label: String(Math.round(index * step)),
  }));
}

export function handInPage(view: SittingView, person: Person, csrf: string): HandInPage {
  const { sitting } = view;
  const root = base(sitting.sittingId);
  const { cells, open } = sheetPart(view, null);
  const link = ({ position }: { position: number }) => ({ href: `${root}/${position}`, label: String(position) });
  const again = cells.filter((cell) => cell.again);
  const lead =
    open === 0
      ? 'Every question has an answer.'
      : `${open === 1 ? 'One question is' : `${open} questions are`} still blank. A blank scores nothing, and nothing is taken off for a wrong answer: a guess cannot cost you a mark.`;
  return {
    view: 'papers/hand-in',
    data: {
      title: sitting.title,
      csrf,
      action: `${root}/hand-in`,
      back: `${root}/1`,
      time: timePart(view, person),
      lead,
      blank: cells.filter(({ choice }) => choice === '').map(link),
      again: again.map(link),
      titleBlock: sittingTitleBlock(view, person),
    },
  };
}

export function sittingTitleBlock({ sitting }: Pick<SittingView, 'sitting'>, person: Person) {
  const { blueprint } = sitting;
  const topics = Object.values(blueprint.shares).filter((share) => share > 0).length;
  return [
    field('Paper', sitting.title, 4, { name: true }),
    field('Candidate', person.displayName, 4),
    field('Pass mark', `${blueprint.passMark} of ${blueprint.questions}`, 4),
    field('Specification', `${counted(blueprint.questions, 'question')}, ${counted(topics, 'topic')}`, 4),
    field('Time', `${blueprint.minutes} min${sitting.extraTime === 0 ? '' : ` and ${sitting.extraTime} %`}`, 4),
    field('Pack', `${sitting.packTitle} ${sitting.packVersion}`, 4),
  ];
}

/** "3, 7 and 9". */
export const numbersWords = (numbers: readonly number[]): string => listWords(numbers.map(String));
