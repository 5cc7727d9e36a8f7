import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawingSvg } from '../../src/core/drawing.js';
import { randomFrom } from '../../src/core/random.js';
import { readSvg } from '../../src/packs/drawings/read-svg.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { chromiumPath, launch } from './browser.js';

/**
 * What we print of a drawing, held against an outside cleaner (DOMPurify) in a real browser: it finds nothing to take away. Our own reader
 * does not clean a file, it draws the known shapes anew; this shows that what comes out is what a cleaner would have let through.
 */

const packs = join(projectFolder, 'question-packs');
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

async function shippedDrawings(): Promise<{ id: string; content: Uint8Array }[]> {
  const names = (await readdir(packs, { recursive: true })).filter((name) => name.endsWith('.svg'));
  return await Promise.all(
    names.map(async (name) => ({ id: name.replace(/^.*[\\/]|\.svg$/g, ''), content: new Uint8Array(await readFile(join(packs, name))) })),
  );
}

/** With and without the names of parts, as pages print it. */
function printed(id: string, content: Uint8Array): string[] {
  const { drawing } = readSvg(id, content);
  return drawing === null ? [] : [true, false].map((named) => drawingSvg(drawing, { named, marks: [], prefix: 'd' }));
}

/** Sound files with a scrap put in at some place, and texts and attributes that look like more than they are; always the same ones. */
function brokenDrawings(sound: string, count: number): string[] {
  const random = randomFrom('drawings');
  const scraps = [
    '&lt;script&gt;alert(1)&lt;/script&gt;',
    '&#60;img src=x onerror=alert(1)&#62;',
    '&lt;/title&gt;&lt;style&gt;&lt;img src=x&gt;',
    '&amp;lt;b&amp;gt;',
    '<script>alert(1)</script>',
    '<style>*{}</style>',
    '<foreignObject><b/></foreignObject>',
    '<desc>&lt;iframe&gt;</desc>',
    '<title>&lt;/svg&gt;&lt;img src=x&gt;</title>',
    '<tspan>&lt;a&gt;</tspan>',
    ' onload="alert(1)"',
    ' href="javascript:alert(1)"',
    ' class="thin"',
    ' x="1"',
    '<!-- --><!-->',
    ']]&gt;',
    '{{7*7}}',
    "'",
    '&quot;',
  ];
  return Array.from({ length: count }, () => {
    const at = random.below(sound.length);
    return sound.slice(0, at) + (scraps[random.below(scraps.length)] ?? '') + sound.slice(at + random.below(3));
  });
}

/** Shapes and nothing of HTML; `body` is what the cleaner itself puts round them, and `role` is for screen readers. */
const cleanerOptions = { USE_PROFILES: { svg: true }, ADD_TAGS: ['body'], ADD_ATTR: ['role'] };

describe.skipIf(chromiumPath === undefined)('drawings as an outside cleaner sees them', { timeout: 120_000 }, () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await launch();
    page = await browser.newPage();
    await page.setContent('<!doctype html><title>drawings</title>');
    await page.addScriptTag({ path: join(projectFolder, 'node_modules/dompurify/dist/purify.min.js') });
  });
  afterAll(() => browser?.close());

  /** What the cleaner takes away from each, or changes in it; empty where it is content. */
  const removed = (markups: string[]): Promise<string[]> =>
    page.evaluate(
      ([all, options]) => {
        type Cleaner = { sanitize(markup: string, options: object): string; removed: { element?: Node; attribute?: Attr | null }[] };
        const cleaner = (globalThis as unknown as { DOMPurify: Cleaner }).DOMPurify;
        return all.map((markup) => {
          const clean = cleaner.sanitize(markup, options);
          const template = document.createElement('template');
          template.innerHTML = markup;
          const what = cleaner.removed.map(({ element, attribute }) => element?.nodeName ?? attribute?.name ?? '?').join(' ');
          if (what !== '') return `${what} of ${markup}`;
          return clean === template.innerHTML ? '' : `changed ${markup}`;
        });
      },
      [markups, cleanerOptions] as const,
    );

  it('the cleaner takes away what it should', async () => {
    const bad = [
      '<svg><script>alert(1)</script></svg>',
      '<svg><path onclick="alert(1)" d="M0 0"/></svg>',
      '<svg><a href="javascript:alert(1)"><path d="M0 0"/></a></svg>',
      '<svg><foreignObject><b>x</b></foreignObject></svg>',
    ];
    expect((await removed(bad)).filter((what) => what === '')).toEqual([]);
  });

  it('nothing is taken away from any drawing that comes with the server', async () => {
    const shipped = await shippedDrawings();
    const markups = shipped.flatMap(({ id, content }) => printed(id, content));
    expect(shipped.length).toBeGreaterThan(3);
    expect(markups).toHaveLength(2 * shipped.length);
    expect((await removed(markups)).filter((what) => what !== '')).toEqual([]);
  });

  it('nor from what our reader lets through of broken and hostile ones', async () => {
    const sound = new TextDecoder().decode((await shippedDrawings())[0]?.content);
    const small =
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 480 300"><title>A plug</title><desc>Its inside.</desc><g id="fuse" data-mark="120 80"><title>The fuse</title><rect x="10" y="20" width="30" height="10" class="thin"/><text class="name" x="5" y="9">fuse<tspan dy="3">now</tspan></text></g></svg>';
    const tried = [...brokenDrawings(sound, 400), ...brokenDrawings(small, 3000)];
    const markups = [...new Set(tried.flatMap((text) => printed('plug', bytes(text))))];
    expect(markups.length).toBeGreaterThan(100);
    expect((await removed(markups)).filter((what) => what !== '')).toEqual([]);
    // Nothing ran while they were looked at.
    expect(await page.evaluate(() => document.title)).toBe('drawings');
  });
});
