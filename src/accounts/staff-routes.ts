import type { FastifyInstance } from 'fastify';
import { RungwiseError } from '../core/errors.js';
import { inviteForm, passwordForm, setUpForm, signInForm, tokenParams } from './forms.js';
import { invitationPage, setUpPage, signInPage, staffPage } from './pages.js';
import { originOf, typed, whyOf, type AccountsRoutesNeeds } from './route-needs.js';

/** Staff: signing in, the first administrator, invitations. */
export function staffRoutes(needs: AccountsRoutesNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    signIn(app, needs);
    setUp(app, needs);
    invitations(app, needs);
    staffList(app, needs);
  };
}

const open = { config: { access: 'come-in' as const } };

function tokenOf(params: unknown): string {
  const parsed = tokenParams.safeParse(params);
  if (!parsed.success) throw new RungwiseError('not-found');
  return parsed.data.token;
}

function signIn(app: FastifyInstance, { accounts }: AccountsRoutesNeeds): void {
  app.get('/sign-in', open, async (_request, reply) => reply.page(signInPage(reply.formToken()), { title: 'Sign in' }));

  app.post('/sign-in', open, async (request, reply) => {
    const form = signInForm.safeParse(request.body);
    const cookie = form.success ? await accounts.signIn(form.data.name, form.data.password, request.ip) : null;
    if (cookie !== null) return reply.signIn(cookie).redirect('/', 303);
    reply.code(422);
    const why = form.success
      ? 'That name and password do not belong together. Check both; capital letters count in the password.'
      : 'Type your name and your password.';
    return reply.page(signInPage(reply.formToken(), { value: typed(request.body, 'name'), why: null }, why), { title: 'Not signed in' });
  });
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
    const result = await accounts.setUp(token, form.data.name, form.data.password);
    if (result === 'used') throw new RungwiseError('link-used');
    if (result === 'taken') return again('Somebody has that name already. Choose another.', null);
    return reply.signIn(result.cookie).redirect('/', 303);
  });
}

function invitations(app: FastifyInstance, { accounts }: AccountsRoutesNeeds): void {
  app.get('/invitation/:token', open, async (request, reply) => {
    const token = tokenOf(request.params);
    const person = await accounts.invited(token, request.ip);
    if (person === null) throw new RungwiseError('link-used');
    return reply.page(invitationPage(reply.formToken(), `/invitation/${token}`, person.displayName), { title: 'Choose your password' });
  });

  app.post('/invitation/:token', open, async (request, reply) => {
    const token = tokenOf(request.params);
    const person = await accounts.invited(token, request.ip);
    if (person === null) throw new RungwiseError('link-used');
    const form = passwordForm.safeParse(request.body);
    if (!form.success) {
      reply.code(422);
      const page = invitationPage(reply.formToken(), `/invitation/${token}`, person.displayName, whyOf(form.error, 'password'));
      return reply.page(page, { title: 'Not saved yet' });
    }
    const cookie = await accounts.acceptInvitation(token, form.data.password);
    if (cookie === null) throw new RungwiseError('link-used');
    return reply.signIn(cookie).redirect('/', 303);
  });
}

function staffList(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const { accounts, clock } = needs;
  const config = { access: 'invite-staff' as const };

  app.get('/staff', { config }, async (request, reply) => {
    const page = staffPage(await accounts.listStaff(request.who()), clock.now(), reply.formToken());
    return reply.page(page, { title: 'Staff', layout: 'two' });
  });

  app.post('/staff', { config }, async (request, reply) => {
    const person = request.who();
    const form = inviteForm.safeParse(request.body);
    const result = form.success ? await accounts.invite(person, form.data.name, form.data.role) : null;
    if (form.success && result !== null && result !== 'taken') {
      const until = result.until.toISOString().slice(0, 16).replace('T', ' ');
      const invitation = { name: form.data.name, href: `${originOf(needs, request)}/invitation/${result.token}`, until: `${until} UTC` };
      return reply.page(staffPage(await accounts.listStaff(person), clock.now(), reply.formToken(), invitation), {
        title: 'Invited',
        layout: 'two',
      });
    }
    reply.code(422);
    const why = form.success ? 'Somebody with that name is on the list already. Choose another name.' : whyOf(form.error, 'name');
    const name = { value: typed(request.body, 'name'), why };
    const page = staffPage(await accounts.listStaff(person), clock.now(), reply.formToken(), null, name, typed(request.body, 'role'));
    return reply.page(page, { title: 'Not invited yet', layout: 'two' });
  });
}
