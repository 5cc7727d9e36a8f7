import { parse } from 'node-html-parser';
import type { Pack } from '../../src/core/pack.js';
import { testApp, type Shown, type TestApp, type Visitor } from './app.js';
import { packWithSkills } from './small-skills.js';
import { password, staffOf } from './staff.js';

/** Two classes of two tutors, with a candidate in each, and practical skills in the pack. The clock stands on Thursday 26 November 2026. */

export interface Skilled {
  app: TestApp;
  administrator: Visitor;
  /** Tessa, tutor of the class in which Odo is. */
  tessa: Visitor;
  /** Ludo, tutor of the class in which Wilf is. */
  ludo: Visitor;
  odo: Visitor;
  wilf: Visitor;
  ids: { class: number; otherClass: number; odo: number; wilf: number };
}

export async function skilledApp(pack: Pack = packWithSkills(), logger?: object): Promise<Skilled> {
  const app = await testApp({ pack, start: '2026-11-26T19:30:00Z', ...(logger === undefined ? {} : { logger }) });
  const { administrator, tutor: tessa } = await staffOf(app);
  const ludo = app.visitor('10.0.0.3');
  const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Ludo', role: 'tutor' });
  const invitation = new URL(invited.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
  await ludo.submit(await ludo.get(invitation), invitation, { password });
  const [odo, wilf] = [await app.candidate('Odo'), await app.candidate('Wilf')];
  const idOf = async (name: string): Promise<number> =>
    (await app.rows<{ id: number }>('SELECT id FROM person WHERE display_name = $1', [name]))[0]?.id ?? 0;
  const made = async (name: string, tutor: string, member: string): Promise<number> => {
    const [row] = await app.rows<{ id: number }>('INSERT INTO study_class (name) VALUES ($1) RETURNING id', [name]);
    await app.rows('INSERT INTO class_tutor (class_id, person_id) VALUES ($1, $2)', [row?.id, await idOf(tutor)]);
    await app.rows('INSERT INTO class_member (class_id, person_id) VALUES ($1, $2)', [row?.id, await idOf(member)]);
    return row?.id ?? 0;
  };
  const [first, second] = [await made('Thursday beginners', 'Tessa', 'Odo'), await made('Saturday refreshers', 'Ludo', 'Wilf')];
  return {
    app,
    administrator,
    tessa,
    ludo,
    odo,
    wilf,
    ids: { class: first, otherClass: second, odo: await idOf('Odo'), wilf: await idOf('Wilf') },
  };
}

/** The fields of the form of one skill as it stands on a sheet; what is not ticked is not sent. */
export function fieldsOf(page: Shown, skill: string): Record<string, string> {
  const form = page.html.querySelectorAll('form').find((each) => each.querySelector('input[name=skill]')?.getAttribute('value') === skill);
  if (form === undefined) throw new Error(`no form for ${skill}: ${page.status} ${page.words.slice(0, 200)}`);
  const fields: Record<string, string> = {};
  for (const input of parse(form.toString()).querySelectorAll('input, textarea')) {
    const name = input.getAttribute('name') ?? '';
    if (input.getAttribute('type') === 'checkbox') {
      if (input.hasAttribute('checked')) fields[name] = 'on';
    } else fields[name] = input.tagName === 'TEXTAREA' ? input.text : (input.getAttribute('value') ?? '');
  }
  return fields;
}

/** Ticks of the first criteria. */
export const ticks = (count: number): Record<string, string> =>
  Object.fromEntries(Array.from({ length: count }, (_, at) => [`c${at + 1}`, 'on']));

/** Opens a sheet, fills in the form of one skill and sends it. */
export async function sign(visitor: Visitor, address: string, skill: string, fields: Record<string, string>): Promise<Shown> {
  return await visitor.send('POST', address, { ...fieldsOf(await visitor.get(address), skill), ...fields });
}
