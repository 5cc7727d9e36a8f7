import type { ListedChange } from '../audit/index.js';
import type { Person } from '../accounts/index.js';
import { dayNumber, dayWords } from '../core/calendar.js';
import { localText } from '../core/local-time.js';
import { bytesText } from '../core/words.js';
import { field } from '../study/index.js';
import type { ChangesPage, UpkeepPage } from './page-types.js';
import type { UpkeepState } from './service.js';
import type { LastRun } from './store.js';

/** How the server is doing, in words. */

/** Jobs as an administrator knows them, and how often each runs. */
const jobWords: Record<string, { name: string; often: string }> = {
  'close-overdue': { name: 'Hand in papers whose time is over, end forgotten evenings', often: 'every 20 seconds' },
  tidy: { name: 'Clear sessions and counters that have run out', often: 'every hour' },
  backup: { name: 'Backup', often: 'at night' },
  retention: { name: 'Remove people who have not been here for long', often: 'at night' },
};

type Shown = Omit<UpkeepPage['data'], 'csrf' | 'why' | 'taken'>;

/** @param why a backup could not be taken just now; null otherwise. @param taken one was taken just now */
export function upkeepPage(state: UpkeepState, person: Person, csrf: string, why: string | null = null, taken = false): UpkeepPage {
  return { view: 'upkeep/upkeep', data: { csrf, why, taken, ...shown(state, person) } };
}

function shown(state: UpkeepState, person: Person): Shown {
  const { now, place, runs, backups, disk, lastBackup, warnings } = state;
  const at = (date: Date | null): string => (date === null ? 'never' : momentWords(date, person.timeZone));
  return {
    warnings,
    allWell: warnings.length === 0 ? 'Nothing here needs you at the moment.' : null,
    facts: [...facts(state), { label: 'Disk with the backups', value: disk === null ? 'cannot be asked' : diskWords(disk) }],
    jobs: runs.map((run) => jobLine(run, at)),
    backups: backups.slice(0, mostListed).map(({ name, bytes, at: date }) => ({
      name,
      size: bytesText(bytes),
      at: at(date),
      href: `/upkeep/backups/${name}`,
    })),
    removedHref: state.anyRemoved ? '/upkeep/backups/removed-people.txt' : null,
    backupLead: `Last good backup: ${at(lastBackup)}. ${kept}`,
    sealed: place.sealed,
    sameDisk: state.sameDisk === true,
    titleBlock: [field('Rungwise', place.version, 4), field('As of', at(now), 8)],
  };
}

const mostListed = 20;
const kept = 'On the server stay all of the last two days, and one of each of the last seven days, four weeks and three months.';
const diskWords = ({ free, whole }: { free: number; whole: number }): string => `${bytesText(free)} free of ${bytesText(whole)}`;

function facts({ place, database, counts }: UpkeepState): { label: string; value: string }[] {
  return [
    { label: 'Rungwise', value: place.version },
    { label: 'Database', value: `PostgreSQL ${database.version}${place.embedded ? ', which came with Rungwise' : ', of your own'}` },
    { label: 'Its state', value: `${database.migration.replaceAll('_', ' ')}, ${bytesText(database.bytes)}` },
    { label: 'Candidates', value: `${counts.candidates}, of them here in the last seven days: ${counts.recent}` },
    { label: 'Tutors', value: String(counts.tutors) },
    { label: 'Administrators', value: String(counts.administrators) },
    { label: 'Classes that run', value: String(counts.classes) },
    { label: 'Queries that wait for an answer', value: String(counts.queries) },
    { label: 'Will be removed for want of visits', value: String(counts.leaving) },
  ];
}

function jobLine(run: LastRun, at: (date: Date | null) => string): UpkeepPage['data']['jobs'][number] {
  const words = jobWords[run.job];
  const outcome = run.outcome === null ? 'runs now' : run.outcome === 'done' ? 'done' : `failed; last done ${at(run.doneAt)}`;
  return { name: words === undefined ? run.job : `${words.name}, ${words.often}`, last: at(run.startedAt), outcome, note: run.note };
}

/** A moment as a clock on the reader's wall shows it. */
function momentWords(date: Date, timeZone: string): string {
  return `${dayWords(dayNumber(date.getTime(), timeZone), 'short')}, ${localText(date.getTime(), timeZone).slice(11)}`;
}

const roleNames: Record<string, string> = {
  command: 'A command on the server',
  job: 'The server itself',
  tutor: 'A tutor who has gone',
  administrator: 'An administrator who has gone',
};

export function changesPage({ changes, older }: { changes: readonly ListedChange[]; older: number | null }, person: Person): ChangesPage {
  return {
    view: 'upkeep/changes',
    data: {
      changes: changes.map(({ at, name, role, what, about }) => ({
        at: momentWords(at, person.timeZone),
        who: name ?? roleNames[role] ?? role,
        what,
        about: Object.entries(about)
          .map(([key, value]) => `${key} ${value}`)
          .join(', '),
      })),
      olderHref: older === null ? null : `/upkeep/changes?before=${older}`,
      titleBlock: [field('List', 'What staff changed', 8), field('Lines', String(changes.length), 4)],
    },
  };
}
