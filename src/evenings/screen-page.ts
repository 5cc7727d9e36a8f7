import { regionWords } from '../core/syllabus.js';
import { keyWords } from '../core/tasks/answered-part.js';
import { field } from '../study/index.js';
import { currentItem, livePart, placeWords, rootOf } from './control-page.js';
import type { HeldItem, HeldView } from './holding-service.js';
import type { KeyPart, ScreenPage } from './page-types.js';
import { answeredWords, cautionOf, keyPart, questionPart, wallCounts } from './parts.js';

/** The projector's page: one question in large type, and nothing of its key or its counts before they are shown. */

/** @param phones where candidates go */
export function screenPage(view: HeldView, seen: string, phones: string | null): ScreenPage {
  const { head } = view;
  const item = currentItem(view);
  const asked = item === null ? null : questionPart(item);
  const key = item?.state === 'shown' ? keyPart(item, head.region, null) : null;
  return {
    view: 'evenings/screen',
    data: {
      title: head.title,
      place: placeWords(view),
      live: { ...livePart(view, seen), page: `${rootOf(view)}/screen`, say: '' },
      headline: item !== null ? null : head.endedAt === null ? 'We begin in a moment' : 'The questions are over. Thank you.',
      stem: asked?.stem ?? null,
      drawing: (key === null ? asked?.drawing : (key.answered.drawing ?? asked?.drawing)) ?? null,
      options: item === null ? [] : optionRows(item, view, key),
      state: item === null ? null : stateWords(item, view),
      reason: item === null || key === null ? [] : reasonOf(item, key),
      caution: item === null ? null : cautionOf(item, key !== null),
      phones: head.endedAt === null ? phones : null,
      back: rootOf(view),
      titleBlock: [
        field('Evening', head.title, 4, { name: true }),
        field('Class', head.className, 4),
        field('Questions for', regionWords[head.region], 4),
      ],
    },
  };
}

function optionRows(item: HeldItem, { phones, head }: HeldView, key: KeyPart | null): ScreenPage['data']['options'] {
  const counts = key === null ? [] : wallCounts(item, phones[head.place - 1] ?? [], item.hands).rows;
  return questionPart(item).options.map(({ letter, text }, index) => {
    const row = counts[index];
    return { letter, text, bar: row === undefined ? null : { count: row.count, width: row.width }, key: row?.key === true };
  });
}

function stateWords(item: HeldItem, { answered, head, phones }: HeldView): string {
  const words = answeredWords(answered, head.members);
  switch (item.state) {
    case 'waiting':
      return 'Think first. Answering opens in a moment.';
    case 'open':
      return `Open for answers. ${words}`;
    case 'closed':
      return `Closed. ${words}`;
    case 'shown':
      return wallCounts(item, phones[head.place - 1] ?? [], item.hands).total;
  }
}

/** A fixed question's own reason; a family's rule and the steps with its numbers. */
function reasonOf({ task }: HeldItem, { explanation, working }: KeyPart): string[] {
  if (explanation !== null) return [explanation];
  return working === null ? [keyWords(task)] : [working.words, ...working.steps];
}
