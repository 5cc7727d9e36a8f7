import type { Person } from '../accounts/index.js';
import { dayNumber, dayWords } from '../core/calendar.js';
import type { FieldPart, TitleField } from '../core/page-parts.js';
import type { CheckedRow, RowsChecked } from '../core/papers/result-rows.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import type { RollRow } from './class-store.js';
import { guest, type EntryFaults, type EntryTyped } from './entry-forms.js';
import type { CsvPage, CsvReportPart, EnteredPart, EnterPage } from './entry-page-types.js';
import type { EntryView, Letters } from './entry-service.js';

/** Entering results: the form of one sheet, what has been entered, and a table of many. */

export interface EnterState {
  typed: EntryTyped;
  faults: EntryFaults;
  said: EnterPage['data']['said'];
}

type Handed = RollRow & { sitting: NonNullable<RollRow['sitting']> };

/** What stood on paper and was entered, the latest first. */
const enteredOf = ({ roll }: EntryView): Handed[] =>
  roll
    .filter((row): row is Handed => row.sitting?.way === 'sheet' && row.sitting.handedInAt !== null)
    .sort((a, b) => Number(b.sitting.handedInAt) - Number(a.sitting.handedInAt));

const markOf = ({ sitting }: Handed, { letters }: EntryView): string => `${sitting.right ?? 0} of ${letters[0]?.length ?? 0}`;

/** An empty form. Sheets mostly lie in the order of their versions, so the next one is there already. */
export function freshForm(view: EntryView): EntryTyped {
  const alone = openMembers(view).length === 0;
  return { candidate: alone ? guest : '', name: '', version: view.head.versions === 1 ? '1' : '', letters: '' };
}

/** The form with what stands on a sheet that is to be corrected. */
export const formOf = (sitting: string, { version, choices }: Letters): EntryTyped => ({
  sitting,
  candidate: '',
  name: '',
  version: String(version),
  letters: choices.map((choice) => choice ?? '-').join(''),
});

/** `Perpetua Moss, version 3: 19 of 26 saved.` @returns null for a sitting that is not there */
export function savedWords(view: EntryView, sittingId: string, again: boolean): EnterPage['data']['said'] {
  const row = enteredOf(view).find(({ sitting }) => sitting.sittingId === sittingId);
  if (row === undefined) return null;
  const { version, passed } = row.sitting;
  return {
    look: again ? 'must' : 'yes',
    word: `${row.name}, version ${version}: ${again ? 'already entered, ' : ''}${markOf(row, view)}${again ? '' : ' saved'}.`,
    note: again ? 'The same sheet was sent twice; it counts once.' : `${passed === true ? 'Passed' : 'Not passed'}.`,
  };
}

const isDone = ({ sitting }: RollRow): boolean => sitting !== null && sitting.handedInAt !== null;

const openMembers = ({ roll }: EntryView): RollRow[] => roll.filter((row) => row.memberId !== null && !isDone(row));

export function enterPage(view: EntryView, person: Person, csrf: string, { typed, faults, said }: EnterState): EnterPage {
  const { head, letters } = view;
  const here = `/class-papers/${head.paperId}`;
  const rows = enteredOf(view);
  const corrected = rows.find(({ sitting }) => sitting.sittingId === typed.sitting) ?? null;
  const open = openMembers(view).length;
  const back = (name: keyof EntryFaults & keyof EntryTyped): FieldPart => ({ value: typed[name], why: faults[name] ?? null });
  return {
    view: 'papers/enter',
    data: {
      csrf,
      title: head.title,
      paperHref: here,
      headline: corrected === null ? 'Enter results' : `Correct ${corrected.name}’s sheet`,
      said,
      fault: faultOf(faults),
      action: `${here}/enter`,
      correcting: corrected === null ? null : correctingPart(corrected, here),
      candidates: candidatesOf(view, typed.candidate),
      candidateWhy: faults.candidate ?? null,
      name: back('name'),
      version: back('version'),
      sure: typed.sure ?? null,
      versionHint: head.versions === 1 ? 'The paper has version 1 only.' : `1 to ${head.versions}; it stands on the sheet.`,
      letters: back('letters'),
      lettersHint: `${letters[0]?.length ?? 0} in all, from question 1 on. Type - for a blank; spaces do not matter.`,
      counts: letters.map((version) => version.map((own) => own.length).join('')).join(' '),
      remove:
        corrected === null || corrected.sitting.guestName === null
          ? null
          : removePart(`${here}/enter/${corrected.sitting.sittingId}`, corrected.name),
      csvHref: `${here}/csv`,
      resultsHref: `${here}/results.csv`,
      left: open === 0 ? 'Every member has a result.' : `${counted(open, 'member')} without a result yet.`,
      rows: rows.map((row) => enteredPart(row, view, person)),
      titleBlock: titleBlock(view, person),
    },
  };
}

const correctingPart = ({ sitting }: Handed, here: string): EnterPage['data']['correcting'] => ({
  sitting: sitting.sittingId,
  note: `The mark is worked out anew.${sitting.guestName === null ? ' What the candidate’s memory has learnt from the paper stays as it is.' : ''}`,
  backHref: `${here}/enter`,
});

function faultOf(faults: EntryFaults): EnterPage['data']['fault'] {
  const [first] = (['candidate', 'name', 'version', 'letters'] as const).filter((name) => faults[name] !== undefined);
  return first === undefined ? null : { word: 'Not saved yet.', why: faults[first] ?? '', target: first };
}

function candidatesOf(view: EntryView, chosen: string): EnterPage['data']['candidates'] {
  // One who has a result meanwhile stays in the list while the form comes back with that name.
  const rows = view.roll.filter((row) => row.memberId !== null && (!isDone(row) || String(row.memberId) === chosen));
  const named = rows.map(({ memberId, name }) => ({ value: String(memberId), text: name }));
  return [{ value: '', text: 'Choose' }, ...named, { value: guest, text: 'Somebody without an account' }].map((option) => ({
    ...option,
    chosen: option.value === chosen,
  }));
}

function enteredPart(row: Handed, view: EntryView, person: Person): EnteredPart {
  const { sittingId, version, passed, handedInAt, guestName } = row.sitting;
  const href = `/class-papers/${view.head.paperId}/enter?correct=${sittingId}`;
  return {
    name: row.name,
    note: guestName === null ? '' : 'no account',
    version,
    mark: markOf(row, view),
    passed: passed === true ? 'passed' : 'not passed',
    when: handedInAt === null ? '' : whenWords(handedInAt, person.timeZone),
    correctHref: href,
    removeHref: guestName === null ? null : `${href}#remove`,
  };
}

const whenWords = (at: Date, timeZone: string): string =>
  `${dayWords(dayNumber(at.getTime(), timeZone), 'short')}, ${at.toLocaleTimeString('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' })}`;

function titleBlock({ head, now }: EntryView, person: Person): TitleField[] {
  return [
    field('Paper', head.title, 6, { name: true }),
    field('Class', head.className ?? '', 6),
    field('Tutor', person.displayName, 6),
    field('As of', whenWords(now, person.timeZone), 6),
  ];
}

/** @param given what was sent: why it is no table, or its rows; null before anything was sent */
export function csvPage(view: EntryView, person: Person, csrf: string, text: string, given: RowsChecked | null): CsvPage {
  const here = `/class-papers/${view.head.paperId}`;
  const report = given === null || 'why' in given ? null : reportOf(given.rows, given.absent);
  return {
    view: 'papers/csv',
    data: {
      csrf,
      title: view.head.title,
      paperHref: here,
      enterHref: `${here}/enter`,
      resultsHref: `${here}/results.csv`,
      action: `${here}/csv`,
      questions: view.letters[0]?.length ?? 0,
      why: given === null ? null : 'why' in given ? given.why : (report?.lead ?? ''),
      text,
      report,
      titleBlock: titleBlock(view, person),
    },
  };
}

const placeOf = ({ row, name }: CheckedRow): string => `Row ${row}${name === '' ? '' : `, ${name}`}`;

function reportOf(rows: readonly CheckedRow[], absent: readonly string[]): CsvReportPart {
  const clean = rows.filter(({ sheet }) => sheet !== null);
  const guests = clean.filter(({ sheet }) => sheet?.memberId === null).map(({ name }) => name);
  const wrong = rows.length - clean.length;
  const held = wrong === 0 ? 'Look at the rows in doubt.' : `${wrong === 1 ? '1 row has' : `${wrong} rows have`} something wrong.`;
  return {
    lead: `${held} ${counted(clean.length, 'row')} of ${rows.length} can be imported.`,
    findings: rows.flatMap((row) => {
      if (row.sheet === null) return [{ place: placeOf(row), words: row.whys.join(' ') }];
      return row.doubt === null ? [] : [{ place: placeOf(row), words: `In doubt. ${row.doubt}` }];
    }),
    guests: guests.length === 0 ? null : guests.join(', '),
    absent: absent.length === 0 ? null : absent.join(', '),
    confirm: clean.length === 0 ? null : { label: `Import the ${counted(clean.length, 'clean row')}`, clean: String(clean.length) },
  };
}

const removePart = (sheet: string, name: string) => ({ action: `${sheet}/remove`, nameAction: `${sheet}/name`, name });
