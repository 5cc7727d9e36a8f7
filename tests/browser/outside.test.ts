import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fixedQuestionSchema } from '../../src/core/questions/schema.js';
import type { Pack } from '../../src/core/pack.js';
import { wholeLife, type Life } from '../support/life.js';
import type { Visitor } from '../support/app.js';
import { beginPaper, makePaper } from '../support/papers.js';
import { packWithSkills } from '../support/small-skills.js';
import { walk } from '../support/world.js';
import { chromiumPath, device, launch, listen } from './device.js';

/** No page asks anything of anybody but this server, runs nothing that was typed, and breaks no rule of its own policy. */

/** What is typed in every field: each would say so on the page if it ran, or ask for something elsewhere. */
const payloads = [
  '<script>window.__xss=1</script>',
  '<img src=x onerror=window.__xss=1>',
  '<svg onload=window.__xss=1>',
  '"><img src=//evil.invalid/a>',
  `'><svg/onload=__xss=1>`,
  '" autofocus onfocus=__xss=1 x="',
  `' onmouseover='__xss=1`,
  '</title><script>__xss=1</script>',
  '</textarea><script>__xss=1</script>',
  '</option></select><img src=x onerror=__xss=1>',
  '<iframe src=javascript:__xss=1>',
  '<a href=javascript:__xss=1>x</a>',
  '<link rel=stylesheet href=//evil.invalid>',
  '<style>@import "//evil.invalid"</style>',
  '<meta http-equiv=refresh content=0;//evil.invalid>',
  '<base href=//evil.invalid/>',
  '{{constructor.constructor("__xss=1")()}}',
  '${__xss=1}<!--<script>',
  '<math><mtext><img src=x onerror=__xss=1>',
  '&lt;img src=x onerror=__xss=1&gt;',
  '<form action=//evil.invalid><button>',
  '=HYPERLINK("//evil.invalid")',
];
const one = (index: number): string => payloads[index % payloads.length] ?? '';

/** The small pack with markup for words in whatever a pack may hold. */
function hostilePack(): Pack {
  const pack = packWithSkills();
  const spoil = (text: string, index: number): string => `${text} ${one(index)}`.slice(0, 230);
  const questions = pack.questions.map((question, at) => {
    if (question.kind !== 'single') return question;
    const options = question.options.map((option, index) => ({ ...option, text: spoil(option.text, at + index) }));
    return fixedQuestionSchema.parse({
      ...question,
      stem: spoil(question.stem, at),
      explanation: spoil(question.explanation, at + 3),
      options,
    });
  });
  return { ...pack, questions };
}

describe.skipIf(chromiumPath === undefined)('every page of every role', () => {
  let life: Life;
  let browser: Browser;
  let address: string;
  /** Pages that no link leads to. */
  let doors: string[];
  beforeAll(async () => {
    life = await wholeLife();
    for (const question of hostilePack().questions)
      await life.app.rows('UPDATE question_revision r SET body = $2 FROM question q WHERE q.id = r.question_id AND q.code = $1', [
        question.id,
        JSON.stringify(question),
      ]);
    await spoilNames(life);
    const sitting = await makePaper(life.person);
    await beginPaper(life.person, sitting);
    const [made] = await life.app.rows<{ code: string }>('SELECT join_code AS code FROM study_class WHERE join_code IS NOT NULL');
    doors = [
      `${sitting}/1`,
      `${sitting}/all`,
      `${sitting}/hand-in`,
      `/join/${made?.code}`,
      '/queries/new?question=1&revision=1',
      `/classes/${life.world.ids.class}/people/slips`,
    ];
    [browser, address] = await Promise.all([launch(), listen(life.app)]);
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await life?.app.close();
  });

  /** Names, titles and texts that people type, where each has room for it. */
  async function spoilNames({ app }: Life): Promise<void> {
    const fields: [table: string, column: string, most: number][] = [
      ['person', 'display_name', 40],
      ['study_class', 'name', 60],
      ['paper', 'title', 60],
      ['evening', 'title', 60],
      ['sitting', 'guest_name', 60],
      ['query', 'body', 200],
      ['query', 'answer', 200],
      ['sign_off', 'remarks', 200],
      ['sign_off', 'signer_name', 40],
      ['topic', 'title', 60],
      ['objective', 'title', 100],
      ['pack', 'title', 60],
    ];
    for (const [table, column, most] of fields)
      await app.rows(
        `UPDATE ${table} t SET ${column} = left(($1::text[])[1 + n.place % ${payloads.length}] || ' ' || n.place, ${most})
         FROM (SELECT ctid, row_number() OVER (ORDER BY ctid)::int AS place FROM ${table}) n WHERE n.ctid = t.ctid AND t.${column} IS NOT NULL`,
        [payloads],
      );
  }

  /** A browser that holds the cookies of somebody, records every request, and fails on a dialog. */
  async function browserOf(
    visitor: Visitor,
  ): Promise<{ context: BrowserContext; found: Awaited<ReturnType<typeof device>>; wrong: string[] }> {
    const found = await device(browser, address);
    const wrong: string[] = [];
    found.page.on('dialog', (dialog) => {
      wrong.push(`a dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    await found.context.addCookies([...visitor.cookies].map(([name, value]) => ({ name, value, url: address })));
    return { context: found.context, found, wrong };
  }

  /** Addresses that the walk does not meet: those of the table of routes that need no number, and files. */
  const plain = (access: string): string[] =>
    life.app.routes.routes
      .filter((route) => route.method === 'GET' && route.access === access && !/[:*]/.test(route.url))
      .map(({ url }) => url);

  /** Of several that fit, the one with the fewest parts left open. */
  const routeOf = (to: string) =>
    life.app.routes.routes
      .filter(({ method, url }) => method === 'GET' && fits(url, to))
      .sort((a, b) => a.url.split(':').length - b.url.split(':').length)[0];

  const withoutPage = (url: string): boolean => /\.(json|csv|ics)$|\/events$|\/calendar\/|^\/(health|ready|live|upkeep\/backups)/.test(url);

  const roles = [
    ['a visitor', () => life.app.visitor('10.3.3.3')],
    ['a candidate', () => life.person],
    ['a tutor', () => life.world.tessa],
    ['an administrator', () => life.world.administrator],
  ] as const;
  const visited = new Set<string>();

  it.each(roles)(
    'asks this server alone, and shows what was typed as text: %s',
    async (_who, whose) => {
      const visitor = whose();
      const open = [
        'come-in',
        'calculate',
        'study',
        'own-data',
        'keep-own-account',
        'be-in-classes',
        'sit-papers',
        'join-evenings',
        'raise-query',
      ];
      const staff = [
        'set-papers',
        'see-classes',
        'keep-classes',
        'analyse-questions',
        'sign-off',
        'hold-evenings',
        'keep-packs',
        'read-bank',
      ];
      const first = [...open, ...staff, 'invite-staff', 'remove-people', 'upkeep', 'remove-oneself'].flatMap(plain);
      const deep = [
        ...doors,
        life.classPaper,
        `/classes/${life.world.ids.class}/evenings/${life.evening}/screen`,
        `/evening/${life.evening}`,
      ];
      const met = await walk(visitor, [...new Set([...first, ...deep])]);
      const { context, found, wrong } = await browserOf(visitor);
      const { page, requests, complaints } = found;
      const looked = new Map<string, number>();
      let pages = 0;
      for (const to of met.addresses) {
        const route = routeOf(to);
        if (withoutPage(to) || /^\/(phrase\/kept|classes\/\d+\/people\/slips\/kept)/.test(to)) continue;
        // Two of each sort, such as two questions of the bank.
        const sort = route?.url ?? to;
        looked.set(sort, (looked.get(sort) ?? 0) + 1);
        if ((looked.get(sort) ?? 0) > 2) continue;
        const response = await page.goto(to, { waitUntil: 'load' });
        if (response?.ok() !== true) continue;
        pages += 1;
        for (const url of [to, new URL(page.url()).pathname]) visited.add(routeOf(url)?.url ?? '');
        if (await page.evaluate(() => (window as { __xss?: unknown }).__xss !== undefined)) wrong.push(`ran on ${to}`);
        if ((await page.locator('main img, main iframe, main base, main script, main style, main link').count()) > 0)
          wrong.push(`markup on ${to}`);
      }
      expect(wrong).toEqual([]);
      expect([...new Set(requests.filter(({ protocol }) => protocol !== 'about:').map(({ origin }) => origin))]).toEqual([address]);
      // Pages that one may not see answer with a status, which the browser mentions; nothing else may be said.
      expect(complaints.filter((text) => !/status of (401|403|404|409)/.test(text))).toEqual([]);
      expect(pages).toBeGreaterThan(8);
      await context.close();
    },
    300_000,
  );

  it('would notice: a page that runs what was typed, or asks elsewhere, is seen by the same watch', async () => {
    const { context, found } = await browserOf(life.app.visitor('10.3.3.4'));
    await found.page.setContent(`<img src="x" onerror="window.__xss=1"><img src="http://evil.invalid/a">`);
    await found.page.waitForFunction(() => (window as { __xss?: unknown }).__xss === 1);
    expect(found.requests.map(({ origin }) => origin)).toContain('http://evil.invalid');
    await context.close();
  });

  it('leaves out no route that shows a page but those that are listed', () => {
    const all = [
      ...new Set(life.app.routes.routes.filter(({ method, access }) => method === 'GET' && access !== 'file').map(({ url }) => url)),
    ];
    const missed = all.filter((url) => !visited.has(url) && !withoutPage(url) && !(url in elsewhere));
    expect(missed).toEqual([]);
    expect(visited.size).toBeGreaterThan(50);
  });

  /** Pages that stand before their reader once or only in a certain state; the tests of their own feature look at them. */
  const elsewhere: Record<string, string> = {
    '/set-up/:token': 'before there is an administrator',
    '/invitation/:token': 'once, by whoever was invited',
    '/phrase/kept': 'leads on',
    '/classes': 'leads to the first page',
    '/classes/:class/people/slips/kept': 'leads on',
    '/study/next': 'leads to the question',
    '/confirm': 'when the password was typed long ago',
    '/study/rounds/:round/end': 'when a round is done',
    '/calculators/:calculator/try/:family': 'with a pack that has a family of the calculator',
    '/packs/uploads/:upload': 'when a pack was sent',
  };
});

function fits(pattern: string, address: string): boolean {
  const [wanted, given] = [pattern.split('/'), (address.split('?', 1)[0] ?? '').split('/')];
  return wanted.length === given.length && wanted.every((part, index) => part.startsWith(':') || part === given[index]);
}
