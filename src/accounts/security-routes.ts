import type { FastifyInstance } from 'fastify';
import { dayNumber, dayWords } from '../core/calendar.js';
import { isSecret, newSecret, secretAddress } from './codes.js';
import { changePasswordForm, dropCodesForm, setCodesForm } from './forms.js';
import { originOf, typed, whyOf, type AccountsRoutesNeeds } from './route-needs.js';
import { codesPage, recoveryPage, securityPage, type SecurityFaults } from './security-pages.js';
import type { Person, Visit } from './sessions.js';

/** Staff about their own password and one-time codes. */
export function securityRoutes(needs: AccountsRoutesNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    security(app, needs);
    setUpCodes(app, needs);
    endCodes(app, needs);
  };
}

const config = { access: 'keep-password' as const, fresh: true };
const words = { title: 'Password and codes', layout: 'two' } as const;

/** What was done, by a word in the address, so that a reload of the page does nothing again. */
const savedWords = new Map([
  ['password', 'Your password is changed, and your other browsers are signed out.'],
  ['off', 'One-time codes are turned off, and your other browsers are signed out.'],
]);

function security(app: FastifyInstance, { accounts }: AccountsRoutesNeeds): void {
  app.get<{ Querystring: { saved?: unknown } }>('/me/security', { config }, async (request, reply) => {
    const person = request.who();
    const saved = savedWords.get(String(request.query.saved)) ?? null;
    return reply.page(securityPage(person, await accounts.security(person), reply.formToken(), saved), words);
  });

  app.post('/me/security', { config }, async (request, reply) => {
    const person = request.who();
    const form = changePasswordForm.safeParse(request.body);
    const result = form.success ? await accounts.changePassword(person, form.data.old, form.data.password) : null;
    if (result !== null && result !== 'wrong' && 'cookie' in result) {
      request.log.info({ person: person.id }, 'password changed');
      return reply.signIn(result.cookie, person.shared).redirect('/me/security?saved=password', 303);
    }
    const faults: SecurityFaults = form.success
      ? {
          old: result === 'wrong' ? 'That is not your password. Capital letters count.' : null,
          password: result === 'wrong' ? null : (result?.weak ?? null),
        }
      : { old: whyOf(form.error, 'old'), password: whyOf(form.error, 'password') };
    reply.code(422);
    const page = securityPage(person, await accounts.security(person), reply.formToken(), null, faults);
    return reply.page(page, { ...words, title: 'Not changed yet' });
  });
}

function setUpCodes(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const { accounts } = needs;
  const early = { ...config, beforeCodes: true };
  const show = (person: Visit, host: string, secret: string, csrf: string, why: string | null = null) => {
    const address = secretAddress(secret, person.displayName, `Rungwise ${host}`);
    return codesPage(person, secret, address, person.needsCodes, csrf, { value: '', why });
  };
  const hostOf = (request: { protocol: string; host: string }): string => new URL(originOf(needs, request)).hostname;

  app.get('/me/codes', { config: early }, async (request, reply) => {
    const person = request.who();
    if (await accounts.hasCodes(person)) return reply.redirect('/me/security', 303);
    const page = show(person, hostOf(request), newSecret(), reply.formToken());
    return reply.page(page, { title: 'Set up one-time codes', layout: 'two', styles: ['class.css'] });
  });

  app.post('/me/codes', { config: early }, async (request, reply) => {
    const person = request.who();
    const form = setCodesForm.safeParse(request.body);
    const result = form.success ? await accounts.setUpCodes(person, form.data.secret, form.data.code) : null;
    if (result === 'before') return reply.redirect('/me/security', 303);
    if (result !== null) {
      request.log.info({ person: person.id }, 'one-time codes set up');
      const page = recoveryPage(person, result.recovery, true, dayOf(needs, person));
      return reply.signIn(result.cookie, person.shared).page(page, { title: 'Recovery codes' });
    }
    reply.code(422);
    const sent = typed(request.body, 'secret');
    const why = form.success
      ? 'That is not the code of this moment. See that the clock of your device is right, and type the six figures it shows now.'
      : (whyOf(form.error, 'code') ?? 'Add the code below to your authenticator, and type the six figures it shows.');
    const page = show(person, hostOf(request), isSecret(sent) ? sent : newSecret(), reply.formToken(), why);
    return reply.page(page, { title: 'Not set up yet', layout: 'two', styles: ['class.css'] });
  });
}

const dayOf = ({ clock }: Pick<AccountsRoutesNeeds, 'clock'>, { timeZone }: Person): string =>
  dayWords(dayNumber(clock.now().getTime(), timeZone));

function endCodes(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const { accounts } = needs;

  app.post('/me/codes/recovery', { config }, async (request, reply) => {
    const person = request.who();
    const codes = await accounts.renewRecoveryCodes(person);
    if (codes === null) return reply.redirect('/me/security', 303);
    return reply.page(recoveryPage(person, codes, false, dayOf(needs, person)), { title: 'Recovery codes' });
  });

  app.post('/me/codes/off', { config }, async (request, reply) => {
    const person = request.who();
    const form = dropCodesForm.safeParse(request.body);
    const result = form.success ? await accounts.dropCodes(person, form.data.dropPassword, form.data.dropCode) : null;
    if (result !== null && typeof result !== 'string') {
      request.log.info({ person: person.id }, 'one-time codes turned off');
      return reply.signIn(result.cookie, person.shared).redirect('/me/security?saved=off', 303);
    }
    const faults: SecurityFaults = form.success
      ? {
          dropPassword: result === 'password' ? 'That is not your password. Capital letters count.' : null,
          dropCode: result === 'code' ? 'That code does not fit. Each code works once: wait for the next one and type that.' : null,
        }
      : { dropPassword: whyOf(form.error, 'dropPassword'), dropCode: whyOf(form.error, 'dropCode') };
    reply.code(422);
    const page = securityPage(person, await accounts.security(person), reply.formToken(), null, faults);
    return reply.page(page, { ...words, title: 'Not turned off yet' });
  });
}
