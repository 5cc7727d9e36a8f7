export { checkBackup } from './check.js';
export { nightlyBackup } from './folder.js';
export { leftOut, rowsIn, type BackupReport } from './format.js';
export { readPassphrase, refuseShort } from './passphrase.js';
export { keptBackups, migrateSafely, migrationsFolder } from './place.js';
export { removedList } from './removed-list.js';
export { restoreBackup, type Removed, type Restored } from './restore.js';
export { writeBackup } from './write.js';
