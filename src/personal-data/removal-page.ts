import { roleWords, type Role } from '../core/permissions.js';
import type { Person } from '../accounts/index.js';
import { field } from '../study/index.js';
import { timeIn } from './held-words.js';
import type { PeoplePage, RemovePage } from './page-types.js';
import type { FoundPerson } from './removal-store.js';

/** The second step of a removal, and the list in which an administrator finds somebody. */

const mustTick = 'Tick the box first: this cannot be undone.';

const candidateGoes = [
  'the account with its name, return phrase and every browser that is signed in',
  'all answers, rounds, the plan, the outlook, and what the server reckons is remembered',
  'mock papers and answer sheets, also those of a class, and what was chosen at class evenings',
  'practical skills that were signed, and queries that were raised, with their answers',
  'a printed sheet of the same name in the same classes loses the name',
  'counts of how many had a question right are made anew without these answers',
];

const backups = 'Backups hold it for up to three months more. If one is put back, whoever was removed is removed from it again.';
const numbers = 'The list of what staff changed keeps a number that belongs to nobody any more.';

export const ownRemovePage = (person: Person, csrf: string, refused: boolean): RemovePage => ({
  view: 'personal-data/remove',
  data: {
    csrf,
    action: '/me/remove',
    back: '/me/data',
    heading: 'Remove me and everything of mine',
    lead: 'This happens at once, and nobody can undo it. To come again you would start from the beginning.',
    download: true,
    goes: candidateGoes,
    stays: [numbers, backups],
    why: refused ? mustTick : null,
    tick: 'I know that it cannot be undone.',
    button: 'Remove everything now',
    titleBlock: [field('Candidate', person.displayName, 12, { name: true })],
  },
});

const staffGoes = [
  'the account with its name, password, codes and every browser that is signed in',
  'the name on classes, papers, evenings, signatures and answers to queries; queries that they raised themselves',
];

export function removePage(found: FoundPerson, person: Person, csrf: string, refused: boolean): RemovePage {
  const candidate = found.role === 'candidate';
  const alone =
    found.tutorOf.length === 0
      ? []
      : [`Classes stay: ${found.tutorOf.join(', ')}. One without another tutor is seen by administrators only.`];
  return {
    view: 'personal-data/remove',
    data: {
      csrf,
      action: `/people/${found.id}/remove`,
      back: '/people',
      heading: `Remove ${found.name}`,
      lead: `${factsOf(found, person)} The removal happens at once and cannot be undone. It stands in the list of changes as number ${found.id}: note that beside the letter of whoever asked.`,
      download: false,
      goes: candidate ? candidateGoes : staffGoes,
      stays: candidate
        ? [numbers, backups]
        : [...alone, 'Papers, evenings and signatures stay, and say “a tutor who is no longer here”.', numbers, backups],
      why: refused ? mustTick : null,
      tick: `I mean ${found.name}, and know that it cannot be undone.`,
      button: `Remove ${found.name}`,
      titleBlock: [
        field('Person', found.name, 6, { name: true }),
        field('Role', roleWords[found.role as Role], 2),
        field('Answers', String(found.answers), 4),
      ],
    },
  };
}

function factsOf({ role, createdAt, lastSeenAt, classes }: FoundPerson, { timeZone }: Person): string {
  const time = timeIn(timeZone);
  const seen = lastSeenAt === null ? 'never here' : `last here ${time(lastSeenAt)}`;
  const where = role === 'candidate' ? (classes.length === 0 ? ', in no class' : `, in ${classes.join(', ')}`) : '';
  return `${roleWords[role as Role]} since ${time(createdAt)}, ${seen}${where}.`;
}

export function peoplePage(
  { people, more }: { people: FoundPerson[]; more: boolean },
  person: Person,
  text: string,
  said: boolean,
): PeoplePage {
  return {
    view: 'personal-data/people',
    data: {
      text,
      said: said ? 'The account and everything of it is gone.' : null,
      found: `${people.length === 1 ? '1 person' : `${people.length} people`}${more ? ', and more: type part of a name' : ''}.`,
      people: people.map((found) => ({ href: `/people/${found.id}/remove`, name: found.name, facts: factsOf(found, person) })),
      titleBlock: [field('Administrator', person.displayName, 12, { name: true })],
    },
  };
}
