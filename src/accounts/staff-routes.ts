import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { known } from '../core/errors.js';
import { forAllForm, inviteForm, personParams, roleForm, sessionForm } from './forms.js';
import { chosen, originOf, typed, whyOf, type AccountsRoutesNeeds } from './route-needs.js';
import { staffMemberPage, staffPage } from './staff-pages.js';

/** Administrators about the accounts of staff. All of it wants the password typed lately. */
export function staffRoutes(needs: AccountsRoutesNeeds) {
  return async function routes(app: FastifyInstance): Promise<void> {
    staffList(app, needs);
    member(app, needs);
    memberActions(app, needs);
  };
}

const config = { access: 'invite-staff' as const, fresh: true };
const untilWords = (until: Date): string => `${until.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
const personOf = (request: FastifyRequest): number => known(personParams.safeParse(request.params)).person;

function staffList(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const { accounts, clock } = needs;

  app.get('/staff', { config }, async (request, reply) => {
    const page = staffPage(await accounts.listStaff(request.who()), clock.now(), reply.formToken());
    return reply.page(page, { title: 'Staff', layout: 'two' });
  });

  app.post('/staff', { config }, async (request, reply) => {
    const person = request.who();
    const form = inviteForm.safeParse(request.body);
    const result = form.success ? await accounts.invite(person, form.data.name, form.data.role) : null;
    if (form.success && result !== null && result !== 'taken') {
      request.about = { person: result.personId };
      const href = `${originOf(needs, request)}/invitation/${result.token}`;
      const invitation = { name: form.data.name, href, until: untilWords(result.until) };
      const page = staffPage(await accounts.listStaff(person), clock.now(), reply.formToken(), invitation);
      return reply.page(page, { title: 'Invited', layout: 'two' });
    }
    reply.code(422);
    const why = form.success ? 'Somebody with that name is on the list already. Choose another name.' : whyOf(form.error, 'name');
    const name = { value: typed(request.body, 'name'), why };
    const page = staffPage(await accounts.listStaff(person), clock.now(), reply.formToken(), null, name, typed(request.body, 'role'));
    return reply.page(page, { title: 'Not invited yet', layout: 'two' });
  });

  app.post('/staff/codes', { config }, async (request, reply) => {
    const { all } = chosen(forAllForm.safeParse(request.body));
    await accounts.requireCodes(request.who(), all === 'yes');
    request.about = { all };
    return reply.redirect('/staff', 303);
  });
}

function member(app: FastifyInstance, needs: AccountsRoutesNeeds): void {
  const { accounts, clock } = needs;

  app.get('/staff/:person', { config }, async (request, reply) => {
    const view = await accounts.staffMember(request.who(), personOf(request));
    return reply.page(staffMemberPage(view, clock.now(), reply.formToken()), { title: view.member.displayName, layout: 'two' });
  });

  app.post('/staff/:person/link', { config }, async (request, reply) => {
    const id = personOf(request);
    const made = await accounts.newPasswordLink(request.who(), id);
    // Nobody of staff is found as not there; a closed account shows its page, which says that it is closed.
    const view = await accounts.staffMember(request.who(), id);
    if (made === null) return reply.redirect(`/staff/${id}`, 303);
    const link = { name: made.name, href: `${originOf(needs, request)}/invitation/${made.token}`, until: untilWords(made.until) };
    return reply.page(staffMemberPage(view, clock.now(), reply.formToken(), link), { title: 'A new link', layout: 'two' });
  });
}

function memberActions(app: FastifyInstance, { accounts }: AccountsRoutesNeeds): void {
  const back = (request: FastifyRequest, reply: FastifyReply): FastifyReply => reply.redirect(`/staff/${personOf(request)}`, 303);

  app.post('/staff/:person/role', { config }, async (request, reply) => {
    const { role } = chosen(roleForm.safeParse(request.body));
    await accounts.changeRole(request.who(), personOf(request), role);
    request.about = { to: role };
    return back(request, reply);
  });

  app.post('/staff/:person/close', { config }, async (request, reply) => {
    await accounts.close(request.who(), personOf(request));
    return back(request, reply);
  });

  app.post('/staff/:person/reopen', { config }, async (request, reply) => {
    await accounts.reopen(request.who(), personOf(request));
    return back(request, reply);
  });

  app.post('/staff/:person/sign-out', { config }, async (request, reply) => {
    await accounts.signOutStaff(request.who(), personOf(request));
    return back(request, reply);
  });

  app.post('/staff/:person/sessions/end', { config }, async (request, reply) => {
    const { session } = chosen(sessionForm.safeParse(request.body));
    await accounts.signOutStaffSession(request.who(), personOf(request), session);
    return back(request, reply);
  });

  app.post('/staff/:person/codes/remove', { config }, async (request, reply) => {
    await accounts.takeOffCodes(request.who(), personOf(request));
    return back(request, reply);
  });
}
