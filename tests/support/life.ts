import { randomUUID } from 'node:crypto';
import { answer, rightFields, wrongFields } from './answering.js';
import type { TestApp, Visitor } from './app.js';
import { chooseIn, held } from './evenings.js';
import { beginPaper, choose, makePaper, withBlueprint } from './papers.js';
import { joinWith, makeJoinCode, peopleOf, slipsOn } from './people.js';
import { packWithSkills } from './small-skills.js';
import { sign, skilledApp, ticks, type Skilled } from './skilled.js';

/** A candidate who has done everything that can be done here, by the pages, with words that stand nowhere else. */

export const marker = {
  name: 'Zqname Marrow',
  query: 'Zqquery is what seems wrong.',
  answer: 'Zqanswer says the tutor.',
  remarks: 'Zqremarks of the tutor',
  /** Somebody else's printed sheet in the same class. */
  other: 'Zqother Vole',
};

export interface Life {
  world: Skilled;
  app: TestApp;
  person: Visitor;
  id: number;
  phrase: string[];
  /** Address of the class paper that the tutor set. */
  classPaper: string;
  evening: string;
}

/** @param logger where the application's log goes; nowhere without one */
export async function wholeLife(logger?: object): Promise<Life> {
  const world = await skilledApp(packWithSkills(), logger);
  const { app, tessa, ids } = world;
  await withBlueprint(app);
  // Before the account there was a printed sheet, of the same name in other letters.
  const classPaper = await setPaper(world);
  const person = app.visitor('10.9.9.9');
  await person.start(marker.name);
  await joinWith(person, await makeJoinCode(tessa, ids.class));
  const [row] = await app.rows<{ id: number }>('SELECT id FROM person WHERE display_name = $1', [marker.name]);
  const id = row?.id ?? 0;
  const phrase = await newSlip(world, id);
  await person.submit(await person.get('/return'), '/return', { phrase: phrase.join(' ') });
  await study(person, world);
  await papers(person);
  const evening = await anEvening(person, world);
  await sign(tessa, `/classes/${ids.class}/skills/${id}`, 'small/lead', { ...ticks(3), seenOn: '2026-11-19', remarks: marker.remarks });
  return { world, app, person, id, phrase, classPaper, evening };
}

/** Ends the sessions there were: a tutor makes a new slip. */
async function newSlip({ tessa, ids }: Skilled, id: number): Promise<string[]> {
  const page = `${peopleOf(ids.class)}/${id}`;
  const sent = await tessa.submit(await tessa.get(page), `${page}/slip`);
  return slipsOn(await tessa.get(sent.location ?? '')).get(marker.name) ?? [];
}

async function study(person: Visitor, { tessa }: Skilled): Promise<void> {
  const round = await person.round('20');
  for (const fields of [rightFields, wrongFields, rightFields]) {
    const page = await person.get(round);
    await answer(person, page, fields(page));
  }
  await person.submit(await person.get('/plan'), '/plan', { exam: '2027-02-20', minutes: '15' });
  await person.get('/outlook');
  const question = await person.get(round);
  const outcome = await answer(person, question, rightFields(question));
  const link = outcome.html.querySelectorAll('a').find((each) => each.text === 'Something seems wrong with this question');
  const form = await person.get((link?.getAttribute('href') ?? '').replaceAll('&amp;', '&'));
  const query = (await person.submit(form, '/queries', { body: marker.query })).location ?? '';
  await tessa.submit(await tessa.get(query), `${query}/answer`, { answer: marker.answer });
}

async function setPaper({ tessa, ids }: Skilled): Promise<string> {
  const fields = {
    title: 'Winter paper',
    region: 'uk',
    versions: '1',
    screen: 'on',
    opens: '2026-11-26T18:00',
    closes: '2026-11-26T23:30',
  };
  const set = await tessa.submit(await tessa.get('/class-papers'), '/class-papers', {
    class: String(ids.class),
    paper: 'small/six',
    ...fields,
  });
  const address = set.location ?? '';
  for (const name of [marker.name.toUpperCase(), marker.other])
    await tessa.submit(await tessa.get(`${address}/enter`), `${address}/enter`, {
      candidate: 'guest',
      name,
      version: '1',
      letters: 'AAAAAA',
    });
  return address;
}

async function papers(person: Visitor): Promise<void> {
  const own = await makePaper(person);
  await beginPaper(person, own);
  await choose(person, own, 1, 'B');
  await person.submit(await person.get(`${own}/hand-in`), `${own}/hand-in`);
  const list = await person.get('/papers');
  const action =
    list.html
      .querySelectorAll('form')
      .find((form) => form.text.includes('Winter paper'))
      ?.getAttribute('action') ?? '';
  const sitting = (await person.submit(list, action)).location ?? '';
  await beginPaper(person, sitting);
  await choose(person, sitting, 2, 'C');
  await person.submit(await person.get(`${sitting}/hand-in`), `${sitting}/hand-in`);
}

async function anEvening(person: Visitor, { tessa, administrator, ids }: Skilled): Promise<string> {
  const list = `/classes/${ids.class}/evenings`;
  const fields = { id: randomUUID(), title: 'Ladders', region: 'uk', questions: 'AA-01-001 BB-01-001', count: '2' };
  const made = await tessa.submit(await tessa.get(list), list, fields);
  const evening = made.location?.split('/').at(-1) ?? '';
  const at = held({ classId: ids.class, tutor: tessa, administrator, member: () => Promise.reject(new Error('not here')) }, evening);
  await at.press('next');
  await at.press('open');
  await chooseIn(person, evening, 'A');
  await at.press('close');
  await at.press('show');
  return evening;
}
