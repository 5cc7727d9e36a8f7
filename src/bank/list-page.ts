import type { Person } from '../accounts/index.js';
import { kindNames } from '../core/questions/schema.js';
import { counted } from '../core/words.js';
import type { BankPage } from './page-types.js';
import { field, listAddress, searchParameters } from './pages.js';
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
      found: total === 0 ? nothing(search) : `${counted(total, 'question')}.`,
      objectives: entryGroups(list, search),
      before: search.page > 1 && total > 0 ? listAddress({ ...search, page: search.page - 1 }) : null,
      after: search.page < pages ? listAddress({ ...search, page: search.page + 1 }) : null,
      pageWords: pages > 1 ? `${first} to ${Math.min(total, first + 49)} of ${total}` : null,
      queries: waiting === 0 ? 'No query waits.' : `${waiting} ${waiting === 1 ? 'query waits' : 'queries wait'} for an answer.`,
      titleBlock: [field('Bank', `${list.objectives.length} objectives`, 6, true), field('Looked at by', person.displayName, 6)],
    },
  };
}

function nothing({ text, retired, topicId, objectiveId, kind }: BankSearch): string {
  if (retired && text === '' && topicId === null && objectiveId === null && kind === null) return 'No question was ever retired.';
  const ways = [
    ...(text === '' ? [] : ['fewer words']),
    ...(topicId === null && objectiveId === null ? [] : ['another topic']),
    ...(kind === null ? [] : ['any kind']),
  ];
  return `Nothing in the bank fits${retired ? ' among the retired ones' : ''}. Take ${ways.join(', or ')}.`;
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
      href: `/bank/questions/${entry.questionId}?${searchParameters(search).toString()}`.replace(/\?$/, ''),
      code: entry.code,
      stem: entry.stem,
      kind: nameOfKind(entry.kind),
      note: noteOf(entry, search),
    })),
  }));
}

function noteOf({ openQueries, retired, drawing, kind, inStem }: BankList['entries'][number], search: BankSearch): string | null {
  const notes = [
    ...(drawing && kind !== 'place' ? ['with a drawing'] : []),
    ...(inStem ? [] : ['found in its options or reasons']),
    ...(openQueries > 0 ? [openQueries === 1 ? 'a query waits' : `${openQueries} queries wait`] : []),
    ...(retired && !search.retired ? ['retired'] : []),
  ];
  return notes.length === 0 ? null : notes.join(', ');
}
