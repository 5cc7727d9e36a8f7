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

/** Staff passwords: 12 letters or more, any letters at all, nothing cut off. */
const password = z
  .string({ error: 'Choose a password.' })
  .refine((text) => [...text].length >= 12, 'Use 12 letters or more. Four words you can remember are a good password.')
  .refine((text) => [...text].length <= 200, 'Use 200 letters at most.')
  .refine((text) => new Set(text).size >= 5, 'That password repeats too few letters. Four words you can remember are better.')
  .refine(
    (text) => !/^(rungwise|password|passwort|qwerty|letmein|123456|abcdef|netherwobbling)/i.test(text.replace(/\s/g, '')),
    'That password is among the first anybody would try. Choose another.',
  );

export const startForm = z.object({
  name,
  region: regionSchema.catch('uk'),
  timeZone: z.string().max(60).catch('Europe/London'),
  startToken: z.uuid('Reload the page and send the form again.'),
});

export const returnForm = z.object({
  phrase: z.string({ error: 'Type the seven words.' }).max(400, 'That is too long. Type just the seven words.'),
});

export const signInForm = z.object({
  name: z.string({ error: 'Type your name.' }).min(1, 'Type your name.').max(80, 'That name is too long.'),
  password: z.string({ error: 'Type your password.' }).min(1, 'Type your password.').max(1000, 'That password is too long.'),
});

export const passwordForm = z.object({ password });
export const setUpForm = z.object({ name, password });

export const accountForm = z.object({
  name,
  region: regionSchema,
  timeZone: z.string().refine(isTimeZone, 'That is no time zone this server knows. Write it like Europe/London or Asia/Kolkata.'),
});

export const inviteForm = z.object({ name, role: z.enum(['tutor', 'administrator']) });
export const tokenParams = z.object({ token: z.string().regex(/^[A-Za-z0-9_-]{32}$/) });
