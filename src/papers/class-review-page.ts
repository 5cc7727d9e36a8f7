import { answeredPart, keyWords } from '../core/tasks/answered-part.js';
import { letterOf } from '../core/tasks/task.js';
import { isTooFew } from '../core/group-figures.js';
import { counted } from '../core/words.js';
import { cautionPart, questionTitleBlock } from '../study/index.js';
import type { ClassReviewPage } from './set-page-types.js';
import type { ReviewView } from './set-service.js';
import { optionsOf, sheetDrawing } from './sheet-part.js';

/** One question of a class paper on the wall: first as it was asked, and then, when the tutor wants it, the key and what was chosen. */

/** @returns null when the paper has no such question */
export function classReviewPage(view: ReviewView, position: number, shown: boolean): ClassReviewPage | null {
  const { head, items } = view;
  const index = items.findIndex((item) => item.position === position);
  const item = items[index];
  if (item === undefined) return null;
  const root = `/class-papers/${head.paperId}`;
  return {
    view: 'papers/class-review',
    data: {
      title: head.title,
      place: `Question ${position} of ${items.length}${head.versions === 1 ? '' : ', letters and numbers of version 1'}`,
      stem: item.stem,
      hidden: shown ? null : { drawing: sheetDrawing(item), options: optionsOf(item), show: `${root}/review/${position}?show=yes` },
      shown: shown ? shownPart(view, index) : null,
      caution: cautionPart(item.caution),
      before: position > 1 ? `${root}/review/${position - 1}` : null,
      after: position < items.length ? `${root}/review/${position + 1}` : null,
      back: root,
      titleBlock: questionTitleBlock(item.bank, item.seed),
    },
  };
}

function shownPart({ items, counts }: ReviewView, index: number): ClassReviewPage['data']['shown'] {
  const item = items[index];
  if (item === undefined) return null;
  const { options, blank, handedIn } = counts[index] ?? { options: [], blank: 0, handedIn: 0 };
  // It stands before the class, where counts of fewer than five would tell who chose what.
  const few = isTooFew(handedIn);
  return {
    fact: keyWords(item.task),
    answered: answeredPart(item.task, item.drawing, null),
    few: few ? `${counted(handedIn, 'paper')} handed in: too few to count here without telling whose they are.` : null,
    counts: few ? [] : options.map((count, place) => ({ letter: letterOf(place), count, share: handedIn === 0 ? '' : `of ${handedIn}` })),
    blank: blank === 0 || few ? null : `${counted(blank, 'blank')}.`,
    explanation: item.bank.item.kind === 'fixed' ? item.bank.item.question.explanation : null,
  };
}
