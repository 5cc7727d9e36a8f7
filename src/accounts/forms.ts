import { z } from 'zod';
import { isTimeZone } from '../core/calendar.js';
import { nameText } from '../core/names.js';
import { regionSchema } from '../core/syllabus.js';

/** What the forms of accounts may hold. Messages are what the person at the form reads. */

const name = nameText(
  40,
  'Write what you want to be called. A first name or a nickname is enough.',
  'That name is too long. Forty letters are enough.',
);

/** Staff passwords: 12 letters or more, any letters at all, nothing cut off. Whether one would be guessed is judged in `passwords.ts`. */
const password = z
  .string({ error: 'Choose a password.' })
  .refine((text) => [...text].length >= 12, 'Use 12 letters or more. Four or five words that have nothing to do with one another are good.')
  .refine((text) => [...text].length <= 1000, 'Use 1000 letters at most.');

/** A password that is there already, whatever it looks like. */
const known = z.string({ error: 'Type your password.' }).min(1, 'Type your password.').max(4000, 'That password is too long.');
const code = z.string({ error: 'Type the code.' }).max(100, 'That is too long for a code.');
const shared = z.literal('yes').optional();

export const startForm = z.object({
  name,
  region: regionSchema.catch('uk'),
  timeZone: z.string().max(60).catch('Europe/London'),
  startToken: z.uuid('Reload the page and send the form again.'),
});

export const returnForm = z.object({
  phrase: z.string({ error: 'Type the seven words.' }).max(400, 'That is too long. Type just the seven words.'),
  shared,
});

export const signInForm = z.object({
  name: z.string({ error: 'Type your name.' }).min(1, 'Type your name.').max(80, 'That name is too long.'),
  password: known,
  shared,
});

export const codeForm = z.object({ code: code.min(1, 'Type the six figures, or a recovery code.') });
export const confirmForm = z.object({ password: known, code: code.default(''), back: z.string().max(400).catch('') });
export const changePasswordForm = z.object({ old: known, password });
export const setCodesForm = z.object({
  secret: z.string().regex(/^[A-Z2-7]{32}$/),
  code: code.min(1, 'Type the six figures it shows now.'),
});
export const dropCodesForm = z.object({ dropPassword: known, dropCode: code.min(1, 'Type the six figures, or a recovery code.') });
/** Which session: a word made of its hash, never the hash itself. */
export const sessionForm = z.object({ session: z.string().regex(/^[0-9a-f]{24}$/) });

export const passwordForm = z.object({ password });
export const setUpForm = z.object({ name, password });

export const accountForm = z.object({
  name,
  region: regionSchema,
  timeZone: z.string().refine(isTimeZone, 'That is no time zone this server knows. Write it like Europe/London or Asia/Kolkata.'),
});

export const roleForm = z.object({ role: z.enum(['tutor', 'administrator']) });
export const forAllForm = z.object({ all: z.enum(['yes', 'no']) });
export const personParams = z.object({
  person: z
    .string()
    .regex(/^[1-9]\d{0,8}$/)
    .transform(Number),
});
export const inviteForm = z.object({ name, role: z.enum(['tutor', 'administrator']) });
export const tokenParams = z.object({ token: z.string().regex(/^[A-Za-z0-9_-]{32}$/) });
