/** Files by which what is held about others leaves the server. */
export const takenAway: Record<string, string> = {
  '/classes/:class/results.csv': 'takes away the table of a class',
  '/class-papers/:paper/results.csv': 'takes away the results of a class paper',
};

/**
 * What each form that staff may send changes, as the end of a sentence that begins with who; null where it is no change
 * that anybody would look up later. A route that staff may use and that is missing here stops the start.
 */
export const changes: Record<string, string | null> = {
  // Coming in and one's own account: the log has sign-ins, and what is one's own is nobody else's business.
  '/start': null,
  '/return': null,
  '/sign-in': null,
  '/sign-in/code': null,
  '/confirm': null,
  '/join': null,
  '/join/start': null,
  '/me': null,
  '/me/sign-out': null,
  '/me/sign-out-everywhere': null,
  '/me/sessions/end': null,
  '/me/shared': null,
  '/me/security': 'changes the own password',
  '/me/codes': 'sets up one-time codes for the own account',
  '/me/codes/recovery': 'makes new recovery codes for the own account',
  '/me/codes/off': 'turns off the one-time codes of the own account',
  '/set-up/:token': null,
  '/invitation/:token': null,

  '/upkeep/backups': 'takes a backup',
  '/staff': 'invites a member of staff, or makes a new link for one',
  '/staff/codes': 'says whether all staff need one-time codes',
  '/staff/:person/role': 'changes the role of a member of staff',
  '/staff/:person/close': 'closes an account of staff',
  '/staff/:person/reopen': 'opens an account of staff again',
  '/staff/:person/link': 'makes a link for a new password',
  '/staff/:person/sign-out': 'signs a member of staff out everywhere',
  '/staff/:person/sessions/end': 'signs a member of staff out of one browser',
  '/staff/:person/codes/remove': 'takes the one-time codes off a member of staff',

  '/packs': null, // only looked over; adding it is the change
  '/packs/uploads/:upload/drop': null,
  '/packs/uploads/:upload/add': 'adds a pack to the bank',
  '/queries': null,
  '/queries/:query/answer': 'answers a query',

  '/classes': 'makes a class',
  '/classes/:class/people/class': 'changes the particulars of a class',
  '/classes/:class/people/end': 'ends or reopens a course',
  '/classes/:class/people/tutors': 'adds a tutor to a class',
  '/classes/:class/people/tutors/remove': 'takes a tutor out of a class',
  '/classes/:class/people/code': 'opens or closes a joining code',
  '/classes/:class/people/add': 'adds people to a class',
  '/classes/:class/people/:person/slip': 'makes a new return slip',
  '/classes/:class/people/:person/move': 'moves somebody to another class',
  '/classes/:class/people/:person/keep': 'keeps somebody for a year more',
  '/classes/:class/people/:person/remove': 'takes somebody out of a class',

  '/people/:person/remove': 'removes somebody for good',
  '/upkeep/keeping': 'sets how long people are kept',
  '/upkeep/keeping/:person': 'keeps somebody for a year more',

  '/class-papers': 'sets a paper for a class',
  '/class-papers/:paper/close': 'closes a class paper',
  '/class-papers/:paper/extra-time': 'gives extra time on a paper',
  '/class-papers/:paper/enter': 'enters the letters of a sheet',
  '/class-papers/:paper/csv': 'enters the letters of sheets from a table',
  '/class-papers/:paper/enter/:sitting/remove': 'removes a sheet',
  '/class-papers/:paper/enter/:sitting/name': 'takes a name off a sheet',
  '/class-papers/blueprints': 'makes a kind of paper',
  '/class-papers/blueprints/retire': 'retires a kind of paper',

  '/analyse': null, // a table that is brought is not kept
  '/classes/:class/evenings': 'opens a class evening',
  '/classes/:class/evenings/:evening/step': null, // each step stands in the evening itself
  '/classes/:class/skills/:member': 'signs a practical skill',
  '/classes/:class/skills/:member/withdraw': 'withdraws a signature',
};
