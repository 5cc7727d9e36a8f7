/**
 * Every failure the program foresees, in one table: what it is called, what HTTP answers, and what a person reads.
 * A message says what went wrong and what to do next; it never carries a path, a query or a stack.
 */
export const errorCodes = {
  'not-found': {
    status: 404,
    title: 'There is no such page',
    message: 'The address may be mistyped, or what it showed is no longer here. Go back to the start and try from there.',
  },
  'link-used': {
    status: 404,
    title: 'This link opens nothing any more',
    message:
      'It has been used, has run out, or was copied only in part. If you have a password already, sign in; otherwise ask for a new link.',
  },
  'not-allowed': {
    status: 403,
    title: 'This page is not for you',
    message: 'You are signed in, but your role does not open this page. Ask the person who runs this server if you think it should.',
  },
  'sign-in-first': {
    status: 401,
    title: 'Please come in first',
    message:
      'This page belongs to somebody, and you are not signed in, or no longer. Come back with your return phrase and open it again. If the account was removed, start anew.',
  },
  'confirm-first': {
    status: 403,
    title: 'Type your password again first',
    message:
      'For changes like this one the server wants to be sure that it is still you. Nothing was changed. Type your password again, then go back in your browser to the form and send it once more: what you typed still stands there.',
  },
  'codes-first': {
    status: 403,
    title: 'Set up one-time codes first',
    message:
      'Whoever runs this server asks all tutors and administrators for them. Nothing was changed. Set them up, and go on from there.',
  },
  'form-expired': {
    status: 403,
    title: 'This form is too old',
    message:
      'The form was opened before you came in, or in another browser, so it was not accepted. Go back, reload the page and send it again.',
  },
  'form-not-understood': {
    status: 400,
    title: 'The form could not be read',
    message: 'Something in the form is missing or was changed on the way. Go back, reload the page and try again.',
  },
  'too-large': {
    status: 413,
    title: 'Too much was sent',
    message: 'The server takes only short forms on this page. Shorten what you typed and send it again.',
  },
  'archive-too-large': {
    status: 413,
    title: 'The file is too large',
    message: 'An archive may have 5 MB. Leave pictures and notes out, pack the folder again, and send it from the page Packs.',
  },
  'wrong-kind': { status: 415, title: 'This was sent in a form the server does not take', message: 'Send the form from its own page.' },
  'wrong-method': { status: 405, title: 'This address does not take that', message: 'Go back to the start and try from there.' },
  'too-many-tries': {
    status: 429,
    title: 'Too many tries',
    message: 'To stop guessing, the server asks you to wait a little before the next try.',
  },
  'changed-meanwhile': {
    status: 409,
    title: 'Something changed meanwhile',
    message: 'The same question was answered somewhere else at the same moment. Go back to Now and carry on from there.',
  },
  'paper-short': {
    status: 409,
    title: 'This paper cannot be made',
    message: 'The pack does not have enough questions for one of its topics where you live. Choose another paper, and tell your tutor.',
  },
  'paper-not-open': {
    status: 409,
    title: 'This paper is not open',
    message: 'It is not open yet, or it has been closed. Go back to Papers to see what can be sat now, and ask your tutor about this one.',
  },
  'database-away': {
    status: 503,
    title: 'Please try again in a moment',
    message: 'The server cannot reach its database just now. Nothing you sent was half stored. Wait a moment and send it again.',
  },
  'disk-full': {
    status: 507,
    title: 'The server has no room left',
    message: 'Nothing was stored. Tell the person who runs this server that its disk is full.',
  },
  'bad-input': {
    status: 400,
    title: 'Something typed does not fit',
    message: 'Look at the notes beside the fields, mend them and send the form again.',
  },
  internal: {
    status: 500,
    title: 'Something went wrong here',
    message: 'It is not your fault. Try again; if it comes back, give the reference number to the person who runs this server.',
  },
} as const;

export type ErrorCode = keyof typeof errorCodes;

/** The one error class of the project. `detail` is for the log, never for a page; `fields` says which form field is meant. */
export class RungwiseError extends Error {
  override readonly name = 'RungwiseError';
  readonly code: ErrorCode;
  readonly status: number;
  readonly fields: Readonly<Record<string, string>>;
  readonly retryAfterSeconds: number | undefined;

  constructor(code: ErrorCode, detail?: string, more: { fields?: Record<string, string>; retryAfterSeconds?: number } = {}) {
    super(detail ?? errorCodes[code].title);
    this.code = code;
    this.status = errorCodes[code].status;
    this.fields = more.fields ?? {};
    this.retryAfterSeconds = more.retryAfterSeconds;
  }
}

/** What an address says, once parsed. @throws RungwiseError `not-found`: an address that cannot be one of ours is simply not there */
export function known<T>(parsed: { success: true; data: T } | { success: false }): T {
  if (!parsed.success) throw new RungwiseError('not-found');
  return parsed.data;
}
