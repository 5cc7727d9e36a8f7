import type { PoolClient } from 'pg';
import type { Region } from '../core/syllabus.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { Installation } from './staff-store.js';

/** What accounts needs from outside. */
export interface AccountsNeeds {
  db: Db;
  clock: Clock;
  installation: Installation;
  /** Called in the transaction that makes a candidate, so that nobody exists without rows to study. */
  enrol: (sql: PoolClient, personId: number, region: Region) => Promise<void>;
}
