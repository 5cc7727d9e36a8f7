import type { FieldPart } from '../core/page-parts.js';
import { empty } from './pages.js';
import type { SetPasswordPage, SignInPage } from './page-types.js';
import type { ConfirmedPage, ConfirmPage, SignInCodePage } from './security-page-types.js';

/** Staff signing in, by a password and by the links that lead to one. */

export const signInPage = (csrf: string, name: FieldPart = empty, why: string | null = null, sharedTicked = false): SignInPage => ({
  view: 'accounts/sign-in',
  data: { csrf, name, why, sharedTicked },
});

export const signInCodePage = (csrf: string, why: string | null = null): SignInCodePage => ({
  view: 'accounts/sign-in-code',
  data: { csrf, code: { value: '', why } },
});

/** @param back an own address to go on to, or nothing */
export function confirmPage(
  csrf: string,
  back: string,
  name: string,
  hasCodes: boolean,
  why: { password: string | null; code: string | null } = { password: null, code: null },
): ConfirmPage {
  return { view: 'accounts/confirm', data: { csrf, back, name, hasCodes, passwordWhy: why.password, code: { value: '', why: why.code } } };
}

export const confirmedPage = (name: string): ConfirmedPage => ({ view: 'accounts/confirmed', data: { name } });

export function setUpPage(csrf: string, action: string, name: FieldPart = empty, passwordWhy: string | null = null): SetPasswordPage {
  return {
    view: 'accounts/set-password',
    data: {
      csrf,
      action,
      heading: 'Set up this server',
      lead: 'Nobody looks after this server yet. Choose a name and a password, and you are its administrator: you can then invite tutors.',
      name,
      nameFixed: false,
      passwordWhy,
    },
  };
}

/** @param again for somebody who has a password, and has forgotten it */
export function invitationPage(
  csrf: string,
  action: string,
  name: string,
  again: boolean,
  passwordWhy: string | null = null,
): SetPasswordPage {
  return {
    view: 'accounts/set-password',
    data: {
      csrf,
      action,
      heading: again ? 'Choose a new password' : 'Choose your password',
      lead: again
        ? 'An administrator made this link for you. The old password stops working as soon as the new one is saved, and all your browsers are signed out.'
        : 'You have been invited to this server. Choose a password; from then on you sign in with your name and that password.',
      name: { value: name, why: null },
      nameFixed: true,
      passwordWhy,
    },
  };
}
