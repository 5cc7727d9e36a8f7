import { describe, expect, it } from 'vitest';
import { warningsOf, type ServerState } from '../../src/core/upkeep.js';
import { bytesText } from '../../src/core/words.js';

/** What an administrator is told; the limits are ours (48 hours, 1 GB, a twentieth of the disk). */

const now = new Date('2026-11-26T12:00:00Z');
const hoursAgo = (hours: number): Date => new Date(now.getTime() - hours * 3_600_000);
const well: ServerState = { now, since: hoursAgo(500), lastBackup: hoursAgo(10), disk: { free: 50e9, whole: 100e9 }, failed: [] };
const said = (state: Partial<ServerState>): string[] => warningsOf({ ...well, ...state }).map(({ what }) => what);

describe('what an administrator must be told', () => {
  it('is nothing when all is well, also in the first two days without a backup', () => {
    expect(said({})).toEqual([]);
    expect(said({ lastBackup: null, since: hoursAgo(47) })).toEqual([]);
  });

  it('is a backup older than two days, and none after two days', () => {
    expect(said({ lastBackup: hoursAgo(48) })).toEqual([]);
    expect(said({ lastBackup: hoursAgo(49) })).toEqual(['The last good backup is 2 days old.']);
    expect(said({ lastBackup: null, since: hoursAgo(49) })).toEqual(['There is no backup yet.']);
  });

  it('is a disk that is nearly full, by size or by share, and nothing about one that cannot be asked', () => {
    expect(said({ disk: { free: 0.9e9, whole: 10e9 } })).toEqual(['The disk is nearly full: 900 MB are free.']);
    expect(said({ disk: { free: 40e9, whole: 1000e9 } })).toEqual(['The disk is nearly full: 40.0 GB are free.']);
    expect(said({ disk: { free: 1.1e9, whole: 10e9 } })).toEqual([]);
    expect(said({ disk: null })).toEqual([]);
  });

  it('is a job that failed; a failed backup is told once, by its age or by its failure', () => {
    const failed = [{ job: 'backup', note: 'Make room.' }];
    expect(said({ failed })).toEqual(['The job “backup” failed when it last ran.']);
    expect(said({ failed, lastBackup: hoursAgo(50) })).toEqual(['The last good backup is 2 days old.']);
  });
});

it('sizes are told in decimal units, as disks are sold', () => {
  expect([0, 999, 1000, 1_234_567, 999_999_999, 123e9, 5e15].map(bytesText)).toEqual([
    '0 bytes',
    '999 bytes',
    '1.0 kB',
    '1.2 MB',
    '1000 MB',
    '123 GB',
    '5000 TB',
  ]);
});
