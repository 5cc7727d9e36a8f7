import { accountStatements } from './held-account-store.js';
import { studyStatements } from './held-study-store.js';

/** Every kind of thing that is held, in the order in which it is told. */
const { account, sessions, recovery_codes, removal_notice, classes, ...words } = accountStatements;

export const statements = { account, sessions, recovery_codes, removal_notice, classes, ...studyStatements, ...words } as const;
