import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { known, RungwiseError } from '../core/errors.js';
import { classParams, memberParams, signForm, withdrawForm } from './forms.js';
import { gridPage } from './grid-page.js';
import { anchorOf } from './listed.js';
import { blankPage, ownPage, recordPage } from './print-pages.js';
import type { SkillsService } from './service.js';
import { sheetPage } from './sheet-page.js';
import { signBack, withdrawBack, type Typed } from './typed.js';

/** Practical skills: a class's, one candidate's, and a candidate's own. */
export function skillsRoutes(skills: SkillsService) {
  return async function routes(app: FastifyInstance): Promise<void> {
    ofClass(app, skills);
    ofMember(app, skills);

    app.get('/skills', { config: { access: 'study' } }, async (request, reply) => {
      const person = request.who();
      const all = (request.query as { all?: unknown }).all === 'yes';
      return reply.page(ownPage(await skills.own(person), person, all), { title: 'Practical skills', styles });
    });
  };
}

const config = { access: 'sign-off' as const };
const styles = ['class.css'];

function ofClass(app: FastifyInstance, skills: SkillsService): void {
  app.get('/classes/:class/skills', { config }, async (request, reply) => {
    const person = request.who();
    const page = gridPage(await skills.grid(person, known(classParams.safeParse(request.params)).class), person);
    return reply.page(page, { title: `${page.data.name}: skills`, layout: 'wide', styles });
  });

  app.get('/classes/:class/skills/sheet', { config }, async (request, reply) => {
    const person = request.who();
    const page = blankPage(await skills.grid(person, known(classParams.safeParse(request.params)).class), person);
    return reply.page(page, { title: `${page.data.className}: a form for skills`, styles });
  });
}

function ofMember(app: FastifyInstance, skills: SkillsService): void {
  const one = '/classes/:class/skills/:member';

  async function show(request: FastifyRequest, reply: FastifyReply, typed: Typed | null): Promise<FastifyReply> {
    const person = request.who();
    const { class: classId, member } = known(memberParams.safeParse(request.params));
    const page = sheetPage(await skills.sheet(person, classId, member), person, reply.formToken(), randomUUID, typed);
    return reply.page(page, { title: `${page.data.name}: skills`, styles });
  }

  app.get(one, { config }, (request, reply) => show(request, reply, null));

  app.post(one, { config }, async (request, reply) => {
    const { class: classId, member } = known(memberParams.safeParse(request.params));
    const form = signForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    const back = signBack(form.data, await skills.signOff(request.who(), classId, member, form.data));
    if (back !== null) return await show(request, reply.code(422), back);
    return reply.redirect(`/classes/${classId}/skills/${member}#${anchorOf(form.data.skill)}`, 303);
  });

  app.post(`${one}/withdraw`, { config }, async (request, reply) => {
    const { class: classId, member } = known(memberParams.safeParse(request.params));
    const form = withdrawForm.safeParse(request.body);
    if (!form.success) throw new RungwiseError('form-not-understood');
    const { id, reason } = form.data;
    const why = await skills.withdraw(request.who(), classId, member, { id, reason });
    if (why !== null) return await show(request, reply.code(422), withdrawBack(id, reason, why));
    return reply.redirect(`/classes/${classId}/skills/${member}`, 303);
  });

  app.get(`${one}/record`, { config }, async (request, reply) => {
    const person = request.who();
    const { class: classId, member } = known(memberParams.safeParse(request.params));
    const page = recordPage(await skills.sheet(person, classId, member), person);
    return reply.page(page, { title: `${page.data.name}: record of skills`, styles });
  });
}
