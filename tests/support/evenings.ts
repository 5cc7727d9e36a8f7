import { randomUUID } from 'node:crypto';
import { Visitor, type Shown, type TestApp } from './app.js';
import { staffOf } from './staff.js';

/** A class with its tutor, and evenings in it. */

export interface TestClass {
  classId: number;
  tutor: Visitor;
  administrator: Visitor;
  /** Somebody who comes in and is put into the class. */
  member(name: string): Promise<Visitor>;
}

/** A class of the first tutor; `Somebody else’s` beside it has no tutor. */
export async function classOf(app: TestApp): Promise<TestClass> {
  const { administrator, tutor } = await staffOf(app);
  const [made] = await app.rows<{ id: number }>(`WITH made AS (INSERT INTO study_class (name) VALUES ('Thursday beginners') RETURNING id)
    INSERT INTO class_tutor (class_id, person_id) SELECT made.id, person.id FROM made, person WHERE person.role = 'tutor' RETURNING class_id AS id`);
  const classId = made?.id ?? 0;
  const member = async (name: string): Promise<Visitor> => {
    const visitor = await app.candidate(name);
    await app.rows('INSERT INTO class_member (class_id, person_id) SELECT $1, max(id) FROM person WHERE display_name = $2', [
      classId,
      name,
    ]);
    return visitor;
  };
  return { classId, tutor, administrator, member };
}

/** Makes an evening by its form. @returns its id */
export async function makeEvening({ classId, tutor }: TestClass, fields: Record<string, string> = {}): Promise<string> {
  const list = `/classes/${classId}/evenings`;
  const made = await tutor.submit(await tutor.get(list), list, { id: randomUUID(), title: 'Ladders and fuses', region: 'uk', ...fields });
  if (made.location === undefined) throw new Error(`no evening: ${made.status} ${made.words}`);
  return made.location.split('/').at(-1) ?? '';
}

/** What a tutor does in an evening, from the control's own page. */
export function held({ classId, tutor }: TestClass, evening: string) {
  const root = `/classes/${classId}/evenings/${evening}`;
  return {
    root,
    control: () => tutor.get(root),
    screen: () => tutor.get(`${root}/screen`),
    /** Presses one button, whether or not the page offers it. */
    press: async (step: string, more: Record<string, string> = {}, visitor = tutor): Promise<Shown> =>
      visitor.submit(await visitor.get(root), `${root}/step`, { do: step, ...more }),
  };
}

/** Sends a choice from the page as it stands, or with the question it showed. */
export async function chooseIn(visitor: Visitor, evening: string, letter: string, page?: Shown): Promise<Shown> {
  const address = `/evening/${evening}`;
  const shown = page ?? (await visitor.get(address));
  const values = Object.fromEntries(
    shown.html
      .querySelectorAll(`form[action="${address}/answer"] input`)
      .map((input) => [input.getAttribute('name') ?? '', input.getAttribute('value') ?? '']),
  );
  return await visitor.send('POST', `${address}/answer`, { ...values, choice: letter });
}

/** The letter of the right option, by the small pack's own rules and what the page prints. */
export function rightOf(page: Shown): string {
  const options = page.html.querySelectorAll('.opts .opt');
  const stem = (page.html.querySelector('h1.stem')?.text ?? '').replace(/[\s\u202f\u00a0]+/g, ' ');
  const takes = Number(/takes (\d+) A/.exec(stem)?.[1]);
  const bare = (text: string): string => text.replace(/^\s*[A-F]\s*/, '');
  const right = options.find(({ text }) => {
    if (text.includes('Key of')) return true;
    if (stem.includes('What power')) return Number.parseFloat(bare(text)) === takes * 230;
    return Number.isFinite(takes) && Number.parseFloat(bare(text)) === [3, 5, 10, 13].find((fuse) => fuse >= takes);
  });
  return right?.querySelector('.balloon')?.text ?? '';
}

export const wrongOf = (page: Shown): string => (rightOf(page) === 'A' ? 'B' : 'A');

/** The same person at another server. */
export function elsewhere(visitor: Visitor, app: TestApp | Awaited<ReturnType<TestApp['another']>>): Visitor {
  const other = new Visitor(app as never);
  for (const [name, value] of visitor.cookies) other.cookies.set(name, value);
  return other;
}
