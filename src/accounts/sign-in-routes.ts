import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { codeForm, confirmForm, signInForm } from './forms.js';
import { originOf, typed, whyOf, type AccountsRoutesNeeds } from './route-needs.js';
import { confirmedPage, confirmPage, signInCodePage, signInPage } from './sign-in-pages.js';
import type { SignedIn } from './sign-in-service.js';

/** Staff signing in, in one step or two, and typing the password again. */
export function signInRoutes(needs: AccountsRoutesNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    withPassword(app, needs);
    withCode(app, needs);
    again(app, needs);
  };
}

const open = { config: { access: 'come-in' as const } };
const pendingCookie = 'rungwise-code';
const pendingSeconds = 300;

/**
 * Lets somebody in whose password was right: to the first page, or to the page that asks for a code. Whoever was signed in with this browser
 * is signed out.
 */
export async function letIn(
  request: FastifyRequest,
  reply: FastifyReply,
  { accounts, origin }: AccountsRoutesNeeds,
  result: Exclude<SignedIn, { done: 'no' }>,
): Promise<FastifyReply> {
  if (result.done === 'code') {
    const secure = originOf({ origin }, request).startsWith('https:');
    const options = { path: '/sign-in', httpOnly: true, sameSite: 'strict', secure, maxAge: pendingSeconds } as const;
    return reply.setCookie(pendingCookie, result.pending, options).redirect('/sign-in/code', 303);
  }
  if (request.person !== null) await accounts.signOut(request.person);
  request.log.info({ person: result.personId }, 'signed in');
  return reply.signIn(result.cookie, result.shared).redirect('/', 303);
}

function withPassword(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  app.get('/sign-in', open, async (_request, reply) => reply.page(signInPage(reply.formToken()), { title: 'Sign in' }));

  app.post('/sign-in', open, async (request, reply) => {
    const form = signInForm.safeParse(request.body);
    if (form.success) {
      const { name, password, shared } = form.data;
      const result = await needs.accounts.signIn(name, password, shared === 'yes', request.ip);
      if (result.done !== 'no') return await letIn(request, reply, needs, result);
      request.log.info({ person: result.personId }, 'sign-in refused');
    }
    reply.code(422);
    const why = form.success
      ? 'That name and password do not belong together. Check both; capital letters count in the password.'
      : 'Type your name and your password.';
    const page = signInPage(
      reply.formToken(),
      { value: typed(request.body, 'name'), why: null },
      why,
      typed(request.body, 'shared') === 'yes',
    );
    return reply.page(page, { title: 'Not signed in' });
  });
}

function withCode(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  app.get('/sign-in/code', open, async (request, reply) => {
    if (!(await needs.accounts.awaitsCode(request.cookies[pendingCookie] ?? ''))) return reply.redirect('/sign-in', 303);
    return reply.page(signInCodePage(reply.formToken()), { title: 'Your one-time code' });
  });

  app.post('/sign-in/code', open, async (request, reply) => {
    const form = codeForm.safeParse(request.body);
    if (form.success) {
      const result = await needs.accounts.signInWithCode(request.cookies[pendingCookie] ?? '', form.data.code);
      if (result === null) return reply.clearCookie(pendingCookie, { path: '/sign-in' }).redirect('/sign-in', 303);
      if (result.done !== 'no') return await letIn(request, reply.clearCookie(pendingCookie, { path: '/sign-in' }), needs, result);
      request.log.info({ person: result.personId }, 'one-time code refused');
    }
    reply.code(422);
    const why = form.success
      ? 'That code does not fit. Each code works once: wait for the next one and type that.'
      : (whyOf(form.error, 'code') ?? 'Type the six figures.');
    return reply.page(signInCodePage(reply.formToken(), why), { title: 'Not signed in yet' });
  });
}

function again(app: FastifyInstance, { accounts }: AccountsRoutesNeeds): void {
  const config = { access: 'keep-password' as const, beforeCodes: true };
  const ownPage = (address: string): string => (app.isFreshPage(address) ? address : '');

  app.get<{ Querystring: { back?: unknown } }>('/confirm', { config }, async (request, reply) => {
    const person = request.who();
    const back = typeof request.query.back === 'string' ? ownPage(request.query.back) : '';
    const page = confirmPage(reply.formToken(), back, person.displayName, await accounts.hasCodes(person));
    return reply.page(page, { title: 'Your password again' });
  });

  app.post('/confirm', { config }, async (request, reply) => {
    const person = request.who();
    const form = confirmForm.safeParse(request.body);
    const back = ownPage(form.success ? form.data.back : '');
    const result = form.success ? await accounts.confirm(person, form.data.password, form.data.code) : 'password';
    if (result === 'yes') {
      if (back !== '') return reply.redirect(back, 303);
      return reply.page(confirmedPage(person.displayName), { title: 'Thank you' });
    }
    request.log.info({ person: person.id, what: result }, 'password again: refused');
    reply.code(422);
    const why = {
      password: result === 'password' ? 'That is not your password. Capital letters count.' : null,
      code: result === 'code' ? 'That code does not fit. Each code works once: wait for the next one and type that.' : null,
    };
    const page = confirmPage(reply.formToken(), back, person.displayName, await accounts.hasCodes(person), why);
    return reply.page(page, { title: 'Not yet' });
  });
}
