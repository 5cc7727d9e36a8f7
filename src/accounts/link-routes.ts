import type { FastifyInstance } from 'fastify';
import { RungwiseError } from '../core/errors.js';
import { passwordForm, setUpForm, tokenParams } from './forms.js';
import { typed, whyOf, type AccountsRoutesNeeds } from './route-needs.js';
import { invitationPage, setUpPage } from './sign-in-pages.js';
import { letIn } from './sign-in-routes.js';

/** One-time links: of the first administrator, of whoever is invited, and in place of a forgotten password. */
export function linkRoutes(needs: AccountsRoutesNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    setUp(app, needs);
    invitations(app, needs);
  };
}

const open = { config: { access: 'come-in' as const } };

function tokenOf(params: unknown): string {
  const parsed = tokenParams.safeParse(params);
  if (!parsed.success) throw new RungwiseError('not-found');
  return parsed.data.token;
}

function setUp(app: FastifyInstance, { accounts }: AccountsRoutesNeeds): void {
  app.get('/set-up/:token', open, async (request, reply) => {
    const token = tokenOf(request.params);
    if (!(await accounts.isSetUpToken(token, request.ip))) throw new RungwiseError('link-used');
    return reply.page(setUpPage(reply.formToken(), `/set-up/${token}`), { title: 'Set up' });
  });

  app.post('/set-up/:token', open, async (request, reply) => {
    const token = tokenOf(request.params);
    const form = setUpForm.safeParse(request.body);
    const again = (nameWhy: string | null, passwordWhy: string | null) => {
      reply.code(422);
      const name = { value: typed(request.body, 'name'), why: nameWhy };
      return reply.page(setUpPage(reply.formToken(), `/set-up/${token}`, name, passwordWhy), { title: 'Not set up yet' });
    };
    if (!form.success) return again(whyOf(form.error, 'name'), whyOf(form.error, 'password'));
    const result = await accounts.setUp(token, form.data.name, form.data.password, request.ip);
    if (result === 'used') throw new RungwiseError('link-used');
    if (result === 'taken') return again('Somebody has that name already. Choose another.', null);
    if ('weak' in result) return again(null, result.weak);
    if (request.person !== null) await accounts.signOut(request.person);
    request.log.info({ person: result.personId }, 'server set up');
    return reply.signIn(result.cookie).redirect('/', 303);
  });
}

function invitations(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const { accounts } = needs;

  app.get('/invitation/:token', open, async (request, reply) => {
    const token = tokenOf(request.params);
    const person = await accounts.invited(token, request.ip);
    if (person === null) throw new RungwiseError('link-used');
    const page = invitationPage(reply.formToken(), `/invitation/${token}`, person.displayName, person.passwordHash !== null);
    return reply.page(page, { title: 'Choose your password' });
  });

  app.post('/invitation/:token', open, async (request, reply) => {
    const token = tokenOf(request.params);
    const person = await accounts.invited(token, request.ip);
    if (person === null) throw new RungwiseError('link-used');
    const form = passwordForm.safeParse(request.body);
    const result = form.success ? await accounts.acceptInvitation(token, form.data.password, request.ip) : null;
    if (result === 'used') throw new RungwiseError('link-used');
    if (result !== null && 'done' in result && result.done !== 'no') {
      request.log.info({ person: result.personId }, 'password set by a link');
      return await letIn(request, reply, needs, result);
    }
    reply.code(422);
    const why = result !== null && 'weak' in result ? result.weak : form.error === undefined ? null : whyOf(form.error, 'password');
    const page = invitationPage(reply.formToken(), `/invitation/${token}`, person.displayName, person.passwordHash !== null, why);
    return reply.page(page, { title: 'Not saved yet' });
  });
}
