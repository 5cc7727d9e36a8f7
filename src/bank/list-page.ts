import type { Person } from '../accounts/index.js';
import { kindNames } from '../core/questions/schema.js';
import type { BankPage } from './page-types.js';
import { counted, field } from './pages.js';
import type { BankList, BankSearch } from './service.js';

/** What was found in the bank, by objective. */

const nameOfKind = (kind: string): string => (kindNames as Readonly<Record<string, string>>)[kind] ?? kind;

export function bankPage(list: BankList, waiting: number, person: Person): BankPage {
  const { search, total, pages } = list;
  const first = total === 0 ? 0 : (search.page - 1) * 50 + 1;
  return {
    view: 'bank/list',
    data: {
      where: whereGroups(list),
      kinds: Object.entries(kindNames).map(([value, text]) => ({ value, text, chosen: value === search.kind })),
      text: search.text,
      retired: search.retired,
      found: total === 0 ? 'Nothing in the bank fits. Take fewer words, or another topic.' : `${counted(total, 'question')}.`,
      objectives: entryGroups(list, search),
      before: search.page > 1 && total > 0 ? addressOf(search, search.page - 1) : null,
      after: search.page < pages ? addressOf(search, search.page + 1) : null,
      pageWords: pages > 1 ? `${first} to ${Math.min(total, first + 49)} of ${total}` : null,
      queries: waiting === 0 ? 'No query waits.' : `${waiting} ${waiting === 1 ? 'query waits' : 'queries wait'} for an answer.`,
      titleBlock: [field('Bank', `${list.objectives.length} objectives`, 6, true), field('Looked at by', person.displayName, 6)],
    },
  };
}

/** Written like the form's own address, so that both lead to one place. */
function addressOf(search: BankSearch, page: number): string {
  const where = search.topicId !== null ? `t${search.topicId}` : search.objectiveId !== null ? `o${search.objectiveId}` : '';
  const query = new URLSearchParams({
    where,
    kind: search.kind ?? '',
    text: search.text,
    ...(search.retired ? { retired: 'yes' } : {}),
    page: String(page),
  });
  return `/bank?${query.toString()}`;
}

function whereGroups({ objectives, search }: BankList): BankPage['data']['where'] {
  const several = new Set(objectives.map(({ packTitle }) => packTitle)).size > 1;
  const topics = new Map<number, typeof objectives>();
  for (const entry of objectives) topics.set(entry.topicId, [...(topics.get(entry.topicId) ?? []), entry]);
  return [...topics].map(([topicId, entries]) => {
    const { topic, topicTitle, packTitle } = entries[0] as (typeof entries)[number];
    const questions = entries.reduce((sum, entry) => sum + entry.questions, 0);
    return {
      label: `${topicTitle}${several ? `, ${packTitle}` : ''}`,
      choices: [
        { value: `t${topicId}`, text: `${topic} ${topicTitle}, all (${questions})`, chosen: topicId === search.topicId },
        ...entries.map((entry) => ({
          value: `o${entry.objectiveId}`,
          text: `${entry.objective} ${entry.objectiveTitle} (${entry.questions})`,
          chosen: entry.objectiveId === search.objectiveId,
        })),
      ],
    };
  });
}

function entryGroups({ entries }: BankList, search: BankSearch): BankPage['data']['objectives'] {
  const groups = new Map<number, typeof entries>();
  for (const entry of entries) groups.set(entry.objectiveId, [...(groups.get(entry.objectiveId) ?? []), entry]);
  return [...groups.values()].map((group) => ({
    title: `${group[0]?.objective ?? ''} ${group[0]?.objectiveTitle ?? ''}`,
    entries: group.map((entry) => ({
      href: `/bank/questions/${entry.questionId}`,
      code: entry.code,
      stem: entry.stem,
      kind: nameOfKind(entry.kind),
      note: noteOf(entry, search),
    })),
  }));
}

function noteOf({ openQueries, retired }: BankList['entries'][number], search: BankSearch): string | null {
  const notes = [
    ...(openQueries > 0 ? [openQueries === 1 ? 'a query waits' : `${openQueries} queries wait`] : []),
    ...(retired && !search.retired ? ['retired'] : []),
  ];
  return notes.length === 0 ? null : notes.join(', ');
}
