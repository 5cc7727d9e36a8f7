import { parse } from 'node-html-parser';
import type { Shown, TestApp, Visitor } from './app.js';
import { password } from './staff.js';

/** Classes and their people as tutors and candidates make them: by the pages. */

/** Another tutor, whom the administrator invites. */
export async function anotherTutor(app: TestApp, administrator: Visitor, name: string, address: string): Promise<Visitor> {
  const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name, role: 'tutor' });
  const invitation = new URL(invited.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
  const tutor = app.visitor(address);
  await tutor.submit(await tutor.get(invitation), invitation, { password });
  return tutor;
}

const emptyClass = { exam: '', paper: '', meetsOn: '', meetsAt: '' };

/** @returns the id of the class */
export async function makeClass(tutor: Visitor, name: string, fields: Record<string, string> = {}): Promise<number> {
  const sent = await tutor.submit(await tutor.get('/classes/new'), '/classes', { ...emptyClass, name, ...fields });
  const id = /^\/classes\/(\d+)\/people\?said=made$/.exec(sent.location ?? '')?.[1];
  if (id === undefined) throw new Error(`no class: ${sent.status} ${sent.words.slice(0, 300)}`);
  return Number(id);
}

export const peopleOf = (classId: number): string => `/classes/${classId}/people`;

/** Sends one of the forms of a class's page about people. @returns the page that follows */
export async function onPeople(tutor: Visitor, classId: number, form: string, fields: Record<string, string> = {}): Promise<Shown> {
  const root = peopleOf(classId);
  const sent = await tutor.submit(await tutor.get(root), `${root}/${form}`, fields);
  return sent.location === undefined ? sent : await tutor.get(sent.location);
}

/** Makes a joining code, and reads it off the page. */
export async function makeJoinCode(tutor: Visitor, classId: number, days = '7'): Promise<string> {
  const page = await onPeople(tutor, classId, 'code', { what: 'new', days });
  return codeOn(page);
}

export const codeOn = (page: Shown): string => page.html.querySelector('p.code')?.text.replace(' ', '') ?? '';

/** A candidate who is in joins by typing the code. @returns the page after it */
export async function joinWith(visitor: Visitor, code: string): Promise<Shown> {
  const found = await visitor.submit(await visitor.get('/join'), '/join', { code });
  const sent = await visitor.submit(found, '/join/in');
  return sent.location === undefined ? sent : await visitor.get(sent.location);
}

/** Adds candidates without a device. @returns their slips: words by name */
export async function addNames(tutor: Visitor, classId: number, names: string): Promise<Map<string, string[]>> {
  return slipsOn(await onPeople(tutor, classId, 'add', { names }));
}

export const slipsOn = (page: Shown): Map<string, string[]> =>
  new Map(
    page.html
      .querySelectorAll('.cut')
      .map((slip) => [slip.querySelector('h2')?.text ?? '', slip.querySelectorAll('.words li').map((word) => word.text.trim())]),
  );

/** Names in the table of candidates. */
export const membersOn = (page: Shown): string[] => page.html.querySelectorAll('tbody th a').map((link) => link.text);

/** Address of a candidate's own page in the class. */
export function personLink(page: Shown, name: string): string {
  const link = page.html.querySelectorAll('tbody th a').find((each) => each.text === name);
  return link?.getAttribute('href') ?? '';
}

/** A page without what differs each time: tokens of forms, fresh ids, and the times of the title block. */
export function masked(page: Shown): string {
  const html = parse(page.text);
  for (const input of html.querySelectorAll('input[type=hidden]')) input.setAttribute('value', 'masked');
  return html.toString();
}
