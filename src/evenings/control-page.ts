import type { Person } from '../accounts/index.js';
import { classTabs } from '../classes/index.js';
import { dayNumber, dayWords } from '../core/calendar.js';
import { currentState, stepsNow, type EveningState, type Refusal, type Step } from '../core/evenings/steps.js';
import { lettersOf } from '../core/papers/sheet.js';
import { regionWords } from '../core/syllabus.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import { handsPart, listRow, resultRow, type HandsTyped } from './control-lists.js';
import type { HeldItem, HeldView } from './holding-service.js';
import type { ControlPage, LivePart } from './page-types.js';
import { answeredWords, cautionOf, countsPart, keyPart, questionPart } from './parts.js';

/** The tutor's control of an evening. */

export const refusalWords: Readonly<Record<Refusal, string>> = {
  ended: 'This evening is over, so nothing was changed.',
  moved: 'Another page had moved on, so nothing was changed. This is how it stands.',
  'not-begun': 'The evening has not begun: put the first question up.',
  'still-open': 'The question is still open. Close it first.',
  'shown-already': 'The answer has been shown, so the question cannot be opened again.',
  'no-more': 'This is the last question.',
  'none-before': 'This is the first question.',
};

export const stateOf = ({ head, items }: Pick<HeldView, 'head' | 'items'>): EveningState => ({
  place: head.place,
  ended: head.endedAt !== null,
  states: items.map(({ state }) => state),
});

export const rootOf = ({ head }: Pick<HeldView, 'head'>): string => `/classes/${head.classId}/evenings/${head.eveningId}`;

export const placeWords = ({ head }: Pick<HeldView, 'head'>): string =>
  head.place === 0 || head.endedAt !== null ? counted(head.questions, 'question') : `Question ${head.place} of ${head.questions}`;

interface More {
  csrf: string;
  said: Refusal | null;
  /** Where candidates go; null where nobody else can. */
  phones: string | null;
  typed: HandsTyped | null;
}

export function controlPage(view: HeldView, person: Person, seen: string, more: More): ControlPage {
  const { head } = view;
  const item = currentItem(view);
  const state = stateOf(view);
  const over = head.endedAt !== null;
  return {
    view: 'evenings/control',
    data: {
      tabs: classTabs(head.classId, '/evenings'),
      className: head.className,
      csrf: more.csrf,
      title: head.title,
      live: livePart(view, seen),
      headline: `${head.title}: ${over ? 'over' : placeWords(view).toLowerCase()}`,
      state: stateLine(view),
      answered: phonesLine(view),
      said: more.said === null ? null : refusalWords[more.said],
      fault: more.typed === null ? null : { why: more.typed.why, target: `hand-${lettersAt(item, more.typed.index)}` },
      action: `${rootOf(view)}/step`,
      seen: head.place,
      ...buttons(state),
      end: !over,
      hands: item === null || over ? null : handsPart(item, more.typed),
      ...questionParts(item, view),
      list: over ? [] : view.items.map((each) => listRow(each, view)),
      results: over ? view.items.map((each) => resultRow(each, view)) : [],
      back: `/classes/${head.classId}/evenings`,
      screen: `${rootOf(view)}/screen`,
      phones: more.phones,
      titleBlock: [
        field('Class', head.className, 6, { name: true }),
        field('Tutor', person.displayName, 6),
        field('Questions for', regionWords[head.region], 6),
        field('Made', dayWords(dayNumber(head.madeAt.getTime(), person.timeZone)), 6),
      ],
    },
  };
}

function questionParts(
  item: HeldItem | null,
  { head, phones }: HeldView,
): Pick<ControlPage['data'], 'asked' | 'key' | 'counts' | 'caution'> {
  if (item === null) return { asked: null, key: null, counts: null, caution: null };
  return {
    asked: questionPart(item),
    key: keyPart(item, head.region, null),
    counts: item.state === 'shown' ? countsPart(item, phones[head.place - 1] ?? [], item.hands) : null,
    caution: cautionOf(item, true),
  };
}

/** The question before the class; null before the first and when it is over. */
export const currentItem = ({ head, items }: HeldView): HeldItem | null => (head.endedAt === null ? (items[head.place - 1] ?? null) : null);

const lettersAt = (item: HeldItem | null, index: number): string => (item === null ? '' : (lettersOf(item.task)[index] ?? ''));

export function livePart(view: HeldView, seen: string): LivePart {
  const over = view.head.endedAt !== null;
  return { page: rootOf(view), events: over ? '' : `${rootOf(view)}/events`, seen, say: stateLine(view) };
}

function stateLine(view: HeldView): string {
  if (view.head.endedAt !== null) return 'This evening is over. What was answered on phones is recorded.';
  switch (currentState(stateOf(view))) {
    case null:
      return 'Ready. The screen says that it begins in a moment, and phones wait.';
    case 'waiting':
      return 'On the screen. Phones wait until you open it.';
    case 'open':
      return 'Open for answers on phones.';
    case 'closed':
      return 'Closed, with the counts hidden.';
    case 'shown':
      return 'The counts and the answer are shown.';
  }
}

/** How many phones have answered, while that is of use; never what, and never whose. */
function phonesLine(view: HeldView): string | null {
  const state = currentItem(view)?.state;
  return state === 'open' || state === 'closed' ? answeredWords(view.answered, view.head.members) : null;
}

function labels(state: EveningState, step: Step): string {
  const current = currentState(state);
  switch (step) {
    case 'open':
      return current === 'closed' ? 'Open it again' : 'Open for answers';
    case 'close':
      return 'Close the question';
    case 'show':
      return current === 'waiting' ? 'Show the answer without phones' : 'Show the counts and the answer';
    case 'next':
      return state.place === 0 ? 'Begin: put up question 1' : 'Next question';
    case 'back':
      return 'Question before';
    case 'end':
      return 'End the evening';
  }
}

function buttons(state: EveningState): Pick<ControlPage['data'], 'go' | 'more'> {
  const now = stepsNow(state);
  const done = !state.ended && state.place === state.states.length && currentState(state) === 'shown';
  const [first, ...rest] = done ? (['end', ...now] as const) : now;
  const button = (step: Step) => ({ step, label: labels(state, step) });
  return { go: first === undefined ? null : button(first), more: rest.map(button) };
}
