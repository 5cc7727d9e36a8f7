import type { HeldKind } from './held-store.js';
import { candidateKinds, lineParts, type KindWords } from './held-words.js';

/** The kinds that are words, and those of staff; then all together. */

const { text, date, joined, after } = lineParts;
const staff = 'Staff of the same class, and administrators.';
const administrators = 'Administrators.';

const wordKinds = {
  sign_offs: {
    title: 'Practical skills signed for you',
    seen: 'The tutors of your classes.',
    kept: null,
    line: (row, time) =>
      joined(
        text(row['title'] ?? row['skill']),
        `seen ${date(row['seen_on'])}, signed ${time(row['signed_at'])} by ${text(row['signed_by'])}`,
        after(row['remarks'], (remarks) => `“${remarks}”`),
        after(row['withdrawn_at'], () => `withdrawn ${time(row['withdrawn_at'])} by ${text(row['withdrawn_by'])}: ${text(row['reason'])}`),
      ),
  },
  queries: {
    title: 'Queries that you raised',
    seen: 'All tutors and administrators, with your name.',
    kept: null,
    line: (row, time) =>
      joined(
        `${text(row['question'])}, ${time(row['raised_at'])}: “${text(row['body'])}”`,
        after(row['answer'], (answer) => `answered ${time(row['answered_at'])} by ${text(row['answered_by'] ?? 'a tutor')}: “${answer}”`),
      ),
  },
  changes_about: {
    title: 'What staff changed about you',
    seen: administrators,
    kept: 'As long as the server: by your number, without your name.',
    line: (row, time) => `${time(row['at'])}: a member of staff (${text(row['by'])}) ${text(row['what'])}`,
  },
  classes_taught: {
    title: 'Classes that you teach',
    seen: 'The candidates of the class, staff, and whoever has its joining code.',
    kept: 'The class stays when you go.',
    line: (row) =>
      joined(
        text(row['class']),
        after(row['ended_at'], () => 'the course has ended'),
      ),
  },
  papers_set: {
    title: 'Papers that you set',
    seen: staff,
    kept: 'The papers stay when you go, without your name.',
    line: (row, time) => `${text(row['title'])} (${text(row['class'])}), made ${time(row['made_at'])}`,
  },
  specifications: {
    title: 'Kinds of paper that you wrote',
    seen: 'All staff.',
    kept: 'They stay when you go, without your name.',
    line: (row, time) => `${text(row['title'])}, made ${time(row['made_at'])}`,
  },
  evenings_held: {
    title: 'Class evenings that you made',
    seen: staff,
    kept: 'They stay when you go, without your name.',
    line: (row, time) => `${text(row['title'])} (${text(row['class'])}), made ${time(row['made_at'])}`,
  },
  signatures_given: {
    title: 'Skills that you signed',
    seen: 'Each candidate whose skill it is, and the tutors of that candidate.',
    kept: 'They stay when you go, without your name.',
    line: (row, time) =>
      `${text(row['title'] ?? row['skill'])}, seen ${date(row['seen_on'])}, signed ${time(row['signed_at'])} as ${text(row['as_name'])}`,
  },
  queries_answered: {
    title: 'Queries that you answered',
    seen: 'Whoever raised it, and all staff.',
    kept: 'They stay when you go, without your name.',
    line: (row, time) => `${text(row['question'])}, ${time(row['answered_at'])}: “${text(row['answer'])}”`,
  },
  slips_made: {
    title: 'Return slips that you made',
    seen: 'The candidate, and the tutors of the same class.',
    kept: 'The time stays when you go, without your name.',
    line: (row, time) => `One, ${time(row['made_at'])}`,
  },
  uploads: {
    title: 'Packs that you sent',
    seen: 'Nobody else; a pack that was added is seen by all.',
    kept: null,
    line: (row, time) => `${text(row['file_name'])}, ${time(row['uploaded_at'])}${row['finished'] === true ? '' : ', still waiting'}`,
  },
  changes_made: {
    title: 'What you changed as staff',
    seen: administrators,
    kept: 'As long as the server: by your number, also when your name is gone.',
    line: (row, time) => `${time(row['at'])}: ${text(row['what'])}`,
  },
} satisfies Partial<Record<HeldKind, KindWords>>;

/** What a candidate never has: it is not even named to them. */
export const ofStaffOnly: ReadonlySet<HeldKind> = new Set<HeldKind>([
  'recovery_codes',
  'classes_taught',
  'papers_set',
  'specifications',
  'evenings_held',
  'signatures_given',
  'queries_answered',
  'slips_made',
  'uploads',
  'changes_made',
]);

export const kindWords: Readonly<Record<HeldKind, KindWords>> = { ...candidateKinds, ...wordKinds };
