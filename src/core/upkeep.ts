import { bytesText } from './words.js';

/** What an administrator must be told of the state of a server: the rules, apart from where the figures come from. */

export interface ServerState {
  now: Date;
  /** When this installation began. */
  since: Date;
  lastBackup: Date | null;
  /** Of the disk with the backups; null when it could not be asked. */
  disk: { free: number; whole: number } | null;
  /** Names of jobs whose last run failed, with what to do. */
  failed: { job: string; note: string }[];
}

export interface Warning {
  what: string;
  todo: string;
}

const hour = 3_600_000;
/** A night may be missed, since a laptop is switched off at times; two not. */
export const backupHours = 48;
const leastFree = 1_000_000_000;
const leastShare = 0.05;

/** The most pressing first; nothing when all is well. */
export function warningsOf(state: ServerState): Warning[] {
  const { now, since, lastBackup, disk, failed } = state;
  const found: Warning[] = [];
  const age = now.getTime() - (lastBackup ?? since).getTime();
  if (age > backupHours * hour) {
    found.push({
      what: lastBackup === null ? 'There is no backup yet.' : `The last good backup is ${Math.floor(age / 24 / hour)} days old.`,
      todo: 'Take one now, below, and look at what the list of jobs says about the nightly one.',
    });
  }
  if (disk !== null && (disk.free < leastFree || disk.free < disk.whole * leastShare)) {
    found.push({
      what: `The disk is nearly full: ${bytesText(disk.free)} are free.`,
      todo: 'Make room: when it is full, answers are refused until there is some.',
    });
  }
  const others = failed.filter(({ job }) => job !== 'backup' || age <= backupHours * hour);
  for (const { job, note } of others) found.push({ what: `The job “${job}” failed when it last ran.`, todo: note });
  return found;
}
