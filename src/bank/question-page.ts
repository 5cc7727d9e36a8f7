import type { Person } from '../accounts/index.js';
import { shortDate } from '../core/calendar.js';
import type { TellTale } from '../core/families/draw.js';
import { workingPart, type TellTalePart } from '../core/outcome-parts.js';
import { regionIds } from '../core/syllabus.js';
import { answeredPart, keyWords } from '../core/tasks/answered-part.js';
import { askedPart } from '../core/tasks/asked-part.js';
import { emptyEntry } from '../core/tasks/task.js';
import { shortened } from '../core/words.js';
import { regions } from '../../shared/regions.js';
import { cautionPart, questionTitleBlock } from '../study/index.js';
import type { BankQuestionPage } from './page-types.js';
import { dateOf, field, listAddress, searchParameters } from './pages.js';
import type { BankView } from './service.js';

/** One question of the bank: as a candidate sees it, then with its key, where it comes from, and what became of it. */

export function bankQuestionPage(view: BankView, person: Person): BankQuestionPage {
  const { bank, put, seed, questionId } = view;
  const { task } = put;
  const draw = (task.kind === 'choice' || task.kind === 'number') && task.draw !== null ? task.draw : null;
  const caution = cautionPart(put.caution);
  return {
    view: 'bank/question',
    data: {
      ...askedPart(put.stem, task, put.drawing, emptyEntry, null),
      code: bank.code,
      topicTitle: bank.topic.title,
      state: stateOf(view),
      back: { href: listAddress(view.search), label: isPlain(view.search) ? 'Bank' : 'Back to what was found' },
      again: changes(bank) ? { href: at(view, { seed: seed + 1 }), label: draw !== null ? 'Other numbers' : 'Another order' } : null,
      regions: view.regions.length < 2 || draw === null ? [] : regionLinks(view),
      fact: keyWords(task),
      key: answeredPart(task, put.drawing, null),
      explanation: bank.item.kind === 'fixed' ? bank.item.question.explanation : null,
      tellTales: draw === null ? [] : draw.tellTales.map(tellTalePart),
      working: put.compiled === null || draw === null ? null : workingPart(put.compiled, draw),
      caution,
      sources: bank.cites.map(({ title, note }) => ({ title, note: note ?? '' })),
      revisions: revisionsOf(view, person),
      queries: queriesOf(view),
      raiseHref: `/queries/new?question=${questionId}&revision=${bank.revision}&seed=${seed}&region=${view.region}`,
      titleBlock: titleBlockOf(view),
    },
  };
}

const queriesOf = (view: BankView): BankQuestionPage['data']['queries'] =>
  view.queries.map((query) => ({
    href: `/queries/${query.id}`,
    label: shortened(query.body),
    state: query.answer === null ? `waits, from ${query.byName}` : `answered by ${query.answeredByName ?? 'a tutor'}`,
  }));

const titleBlockOf = ({ bank, seed, head, regions: askedIn }: BankView): BankQuestionPage['data']['titleBlock'] => [
  ...questionTitleBlock(bank, seed),
  field('Asks to', demandWords[head.demand] ?? 'work something out', 6),
  field('For', askedIn.length === regionIds.length ? 'Every region' : askedIn.map((region) => regions[region].title).join(', '), 6),
];

/** Whether another seed shows it otherwise. */
function changes({ item }: BankView['bank']): boolean {
  if (item.kind === 'numeric') return true;
  return item.question.kind !== 'place' && !(item.question.kind === 'single' && item.question.order === 'fixed');
}

const isPlain = (search: BankView['search']): boolean => searchParameters(search).size === 0;

const demandWords: Readonly<Record<string, string>> = { recall: 'recall', apply: 'apply what is known', judge: 'judge a situation' };

const tellTalePart = ({ label, tell, direction, value, unit }: TellTale): TellTalePart => {
  return { label: `${Number(value.toPrecision(4))} ${unit}`.trim() + `: ${label}`, tell, danger: direction === 'unsafe' };
};

function at(
  { questionId, bank, head, seed, region, search }: BankView,
  change: { seed?: number; region?: string; revision?: number },
): string {
  const revision = change.revision ?? bank.revision;
  const query = new URLSearchParams({
    ...(revision === head.currentRevision ? {} : { revision: String(revision) }),
    seed: String(change.seed ?? seed),
    region: change.region ?? region,
  });
  searchParameters(search).forEach((value, name) => query.set(name, value));
  return `/bank/questions/${questionId}?${query.toString()}`;
}

const regionLinks = (view: BankView): BankQuestionPage['data']['regions'] =>
  view.regions.map((region) => ({
    href: region === view.region ? null : at(view, { region }),
    label: `${regions[region].title}, ${regions[region].supplyVoltage} V`,
  }));

function stateOf({ head, bank }: BankView): string | null {
  if (bank.revision !== head.currentRevision) return `This is revision ${bank.revision}. Now revision ${head.currentRevision} is asked.`;
  return head.retired ? 'Retired: it is asked no more, and kept for those who have answered it.' : null;
}

function revisionsOf(view: BankView, person: Person): BankQuestionPage['data']['revisions'] {
  const oldest = Math.min(...view.revisions.map(({ revision }) => revision));
  return view.revisions.map(({ revision, loadedAt, checked, sameSince }) => ({
    href: revision === view.bank.revision ? null : at(view, { revision }),
    label: `Revision ${revision}`,
    note: [
      `in the bank since ${dateOf(loadedAt, person)}`,
      ...(checked === '' ? [] : [`checked on ${shortDate(checked)}`]),
      ...(revision === oldest
        ? []
        : [sameSince === null ? 'people began afresh with it' : `the same question as revision ${sameSince}, in other words`]),
    ].join(', '),
  }));
}
