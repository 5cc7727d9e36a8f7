import { randomUUID } from 'node:crypto';
import type { TestApp, Visitor } from './app.js';
import { answer, rightFields } from './answering.js';
import { beginPaper, choose, makePaper, withBlueprint } from './papers.js';
import { makeJoinCode } from './people.js';
import { sign, skilledApp, ticks } from './skilled.js';

/** A small club in which everything there is to see has been made, so that every address of the program leads somewhere. */

export interface World {
  app: TestApp;
  people: { candidate: Visitor; tutor: Visitor; administrator: Visitor };
  /** Addresses that no page links to all the time. */
  also: string[];
}

export async function smallWorld(): Promise<World> {
  const { app, administrator, tessa: tutor, odo: candidate, ids } = await skilledApp();
  await withBlueprint(app);
  const sheet = `/classes/${ids.class}/people/${ids.odo}/skills`;
  await sign(tutor, sheet, 'lead', { ...ticks(3), seenOn: '2026-11-26' }).catch(() => undefined);
  const round = await candidate.round();
  await answer(candidate, await candidate.get(round), rightFields(await candidate.get(round)));
  await candidate.round();
  const sitting = await makePaper(candidate);
  await beginPaper(candidate, sitting);
  await choose(candidate, sitting, 1, 'A');
  await candidate.submit(await candidate.get(`${sitting}/hand-in`), `${sitting}/hand-in`);
  const open = await makePaper(candidate);
  await beginPaper(candidate, open);
  await setPaper(tutor);
  const code = await makeJoinCode(tutor, ids.class);
  const list = `/classes/${ids.class}/evenings`;
  const evening = (await tutor.submit(await tutor.get(list), list, { id: randomUUID(), title: 'Ladders', region: 'uk' })).location ?? '';
  await tutor.submit(await tutor.get(evening), `${evening}/step`, { do: 'open' });
  const question = (await app.rows<{ id: number }>('SELECT id FROM question ORDER BY id LIMIT 1'))[0]?.id ?? 0;
  const asking = await candidate.get(`/queries/new?question=${question}&revision=1`);
  await candidate.submit(asking, '/queries', { body: 'Is this so?' });
  const held = evening.split('/').at(-1) ?? '';
  const also = [
    `/classes/${ids.class}`,
    `/join/${code}`,
    `/evening/${held}`,
    `/evening/${held}/1`,
    `${round}/end`,
    `${open}/all`,
    `${open}/hand-in`,
  ];
  return { app, people: { candidate, tutor, administrator }, also: [...also, `/classes/${ids.class}/people/slips`] };
}

async function setPaper(tutor: Visitor): Promise<void> {
  const page = await tutor.get('/class-papers');
  await tutor.submit(page, '/class-papers', {
    class: page.html.querySelector('select[name=class] option')?.getAttribute('value') ?? '',
    paper: 'small/six',
    title: 'Winter paper',
    region: 'uk',
    versions: '2',
    screen: 'on',
    opens: '2026-11-26T19:00',
    closes: '2026-11-26T23:00',
  });
}

/** An address as it was met, and the forms that pages hold. */
export interface Met {
  addresses: Set<string>;
  forms: Map<string, Record<string, string>>;
}

/** Every own address that leads on from the first ones, each looked at once. */
export async function walk(visitor: Visitor, first: readonly string[], most = 300): Promise<Met> {
  const met: Met = { addresses: new Set(first), forms: new Map() };
  for (const address of met.addresses) {
    if (met.addresses.size > most || address.endsWith('/events')) continue;
    const page = await visitor.get(address);
    if (page.location?.startsWith('/') === true) met.addresses.add(page.location);
    for (const link of page.html.querySelectorAll('main a[href^="/"], nav a[href^="/"]')) {
      const to = (link.getAttribute('href') ?? '').replaceAll('&amp;', '&').split('#', 1)[0] ?? '';
      const path = to.split('?', 1)[0] ?? '';
      // Pages that differ in what they search or turn to count as one.
      if (!to.startsWith('/assets/') && ![...met.addresses].some((known) => known.split('?', 1)[0] === path)) met.addresses.add(to);
    }
    for (const form of page.html.querySelectorAll('form')) {
      const action = (form.getAttribute('action') ?? address.split('?', 1)[0] ?? '').replaceAll('&amp;', '&');
      const fields = Object.fromEntries(
        form
          .querySelectorAll('input, select, textarea, button')
          .map((field) => [field.getAttribute('name') ?? '', field.getAttribute('value') ?? '']),
      );
      delete fields[''];
      if (form.getAttribute('method')?.toLowerCase() === 'post') met.forms.set(action, { ...met.forms.get(action), ...fields });
    }
  }
  return met;
}
