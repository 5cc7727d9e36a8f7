/** Who may do what: the one table. Every route names its line, and a route without one is refused. */

export const roles = ['candidate', 'tutor', 'administrator'] as const;
export type Role = (typeof roles)[number];

const table = {
  /** Pages that need nobody: welcome, sign-in, about, assets. */
  'come-in': ['visitor', ...roles],
  /** Calculators, and numbers to try that are not recorded. */
  calculate: ['visitor', ...roles],
  /** Rounds, answers, the return phrase. */
  study: ['candidate'],
  /** Mock papers of one's own and of one's class. */
  'sit-papers': ['candidate'],
  /** Papers for a class, on a screen or printed, and their make-up. */
  'set-papers': ['tutor', 'administrator'],
  /** One's own name, region, sessions. */
  'keep-own-account': roles,
  /** Password and one-time codes of one's own; candidates have a return phrase instead. */
  'keep-password': ['tutor', 'administrator'],
  /** A class one is tutor of, its figures and reports; an administrator sees all. */
  'see-classes': ['tutor', 'administrator'],
  /** Making classes, and who is in them. */
  'keep-classes': ['tutor', 'administrator'],
  /** One's own classes: joining, who sees what, leaving. */
  'be-in-classes': ['candidate'],
  /** Which question is bad. */
  'analyse-questions': ['tutor', 'administrator'],
  /** Practical skills that were seen. */
  'sign-off': ['tutor', 'administrator'],
  /** Questions before a class, one at a time. */
  'hold-evenings': ['tutor', 'administrator'],
  /** Answering them on one's own phone. */
  'join-evenings': ['candidate'],
  /** Adding packs to the bank. */
  'keep-packs': ['tutor', 'administrator'],
  /** The bank with its keys, and the queries about it. */
  'read-bank': ['tutor', 'administrator'],
  /** Saying that something is wrong with a question. */
  'raise-query': roles,
  /** Inviting tutors and administrators. */
  'invite-staff': ['administrator'],
  /** Seeing and taking away all that is held about oneself. */
  'own-data': roles,
  /** Having it removed, oneself with it. */
  'remove-oneself': ['candidate'],
  /** Removing somebody else, and names on printed papers. */
  'remove-people': ['administrator'],
  /** The server's own state, what staff changed, how long people are kept. */
  upkeep: ['administrator'],
} as const satisfies Record<string, readonly (Role | 'visitor')[]>;

export type Permission = keyof typeof table;
export const permissions = Object.keys(table) as Permission[];

export function may(role: Role | 'visitor', permission: Permission): boolean {
  return (table[permission] as readonly string[]).includes(role);
}

export const roleWords: Record<Role, string> = { candidate: 'Candidate', tutor: 'Tutor', administrator: 'Administrator' };
