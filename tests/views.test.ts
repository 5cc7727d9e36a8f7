import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createHash } from 'node:crypto';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { parse, type HTMLElement } from 'node-html-parser';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Chrome } from '../src/core/page-parts.js';
import { loadViews, type Renderer } from '../src/web/plugins/views.js';
import { samples } from './support/page-samples.js';

const root = join(import.meta.dirname, '..');
const views = join(root, 'views');
const assets = join(root, 'public');

const templates = new Map(
  readdirSync(views, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.hbs'))
    .map((name) => [name.replaceAll('\\', '/').slice(0, -4), readFileSync(join(views, name), 'utf8')]),
);

let renderer: Renderer;
beforeAll(async () => {
  renderer = await loadViews(views, assets);
});

const anyChrome: Chrome = { title: 'Any', layout: 'one', nav: [], you: null, scripts: [], styles: [], plainHttp: false };

const named = samples.map((sample) => [sample.name, sample] as const);

function read(html: string): HTMLElement {
  return parse(html, { comment: true });
}

/** Names of elements that were opened and not closed in turn, from a plain reading of the tags. */
function unbalanced(html: string): string[] {
  const empty = new Set(['meta', 'link', 'input', 'br', 'img', 'hr']);
  const open: string[] = [];
  const wrong: string[] = [];
  for (const [, end, name, inside] of html.matchAll(/<(\/?)([a-zA-Z][\w-]*)((?:\s+[\w:-]+(?:="[^"]*")?)*\s*\/?)>/g)) {
    if (empty.has(String(name)) || inside?.endsWith('/')) continue;
    if (end === '') open.push(String(name));
    else if (open.pop() !== name) wrong.push(String(name));
  }
  return [...wrong, ...open];
}

function labelled(field: HTMLElement, page: HTMLElement): boolean {
  const id = field.getAttribute('id');
  const outer = (element: HTMLElement | null): boolean =>
    element !== null && (element.tagName === 'LABEL' || outer(element.parentNode as HTMLElement | null));
  return outer(field) || (id !== undefined && page.querySelectorAll('label').some((label) => label.getAttribute('for') === id));
}

/** A form without a method: only the calculators and what is searched for have them. */
const asks = (form: HTMLElement): boolean =>
  form.getAttribute('method') === undefined &&
  /^\/(calculators|bank|people$|progress\/answers|class-papers\/[\w-]+\/print|classes\/\d+\/people\/join-slips)/.test(
    form.getAttribute('action') ?? '',
  );

describe('every page', () => {
  it.each(named)('%s is one well-formed document with one heading and at most one blue step', (_name, { page, chrome }) => {
    const html = renderer.page(page, chrome);
    expect(html.startsWith('<!doctype html>\n<html lang="en-GB">')).toBe(true);
    expect(unbalanced(html)).toEqual([]);
    const document = read(html);
    expect(document.querySelectorAll('h1')).toHaveLength(1);
    expect(document.querySelectorAll('main')).toHaveLength(1);
    expect(document.querySelectorAll('.titleblock')).toHaveLength(1);
    expect(document.querySelectorAll('.btn.go').length).toBeLessThanOrEqual(1);
    expect(document.querySelector('title')?.text).toBe(`${chrome.title} · Rungwise`);
    expect(Buffer.byteLength(html)).toBeLessThan(30_000);
  });

  it.each(named)('%s labels every field, repeats no id and refers only to ids it has', (_name, { page, chrome }) => {
    const document = read(renderer.page(page, chrome));
    for (const field of document.querySelectorAll('input:not([type=hidden]), textarea, select')) {
      expect(labelled(field, document), `${field.toString()} has no label`).toBe(true);
    }
    const ids = document.querySelectorAll('[id]').map((element) => element.getAttribute('id'));
    expect(new Set(ids).size).toBe(ids.length);
    const wanted = document
      .querySelectorAll('[aria-describedby], [aria-labelledby], [for], a[href^="#"]')
      .flatMap((element) => ['aria-describedby', 'aria-labelledby', 'for', 'href'].map((name) => element.getAttribute(name) ?? ''))
      .flatMap((value) => value.split(' '))
      .filter((value) => value !== '' && !/^(\/|https?:)/.test(value))
      .map((value) => value.replace(/^#/, ''));
    expect(wanted.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it.each(named)('%s holds no inline style, script or handler, and asks for nothing from elsewhere', (_name, { page, chrome }) => {
    const document = read(renderer.page(page, chrome));
    for (const element of document.querySelectorAll('*')) {
      const names = Object.keys(element.attributes);
      expect(names.filter((name) => name === 'style' || name.startsWith('on'))).toEqual([]);
      for (const name of ['src', 'srcset', 'poster', 'data']) expect(element.getAttribute(name) ?? '/').toMatch(/^\/(?!\/)/);
    }
    expect(document.querySelectorAll('style')).toEqual([]);
    for (const script of document.querySelectorAll('script')) expect([script.text, script.getAttribute('type')]).toEqual(['', 'module']);
    for (const link of document.querySelectorAll('link')) expect(link.getAttribute('href')).toMatch(/^\/assets\/[\w.-]+\?v=[0-9a-f]{8}$/);
  });

  it.each(named)(
    '%s gives every posted form its token, and every button that sends a form says so by its place',
    (_name, { page, chrome }) => {
      for (const form of read(renderer.page(page, chrome)).querySelectorAll('form')) {
        expect(form.getAttribute('action')).toMatch(/^\/[\w-]/);
        // What asks for a page and changes nothing carries what was typed in its address, and no token, which would stay there.
        if (asks(form)) {
          expect(form.querySelectorAll('input[name=_csrf]')).toEqual([]);
          continue;
        }
        expect(form.getAttribute('method')).toBe('post');
        expect(form.querySelectorAll('input[type=hidden][name=_csrf]').map((input) => input.getAttribute('value'))).not.toContain('');
        expect(form.querySelectorAll('input[name=_csrf]')).toHaveLength(1);
      }
    },
  );
});

describe('a form that comes back', () => {
  const back = samples
    .filter(({ name }) => name.includes('fault') || name === 'staff-invited')
    .map((sample) => [sample.name, sample] as const);

  it.each(back)('%s says why first, takes the focus there and leads to the place', (_name, { page, chrome }) => {
    const document = read(renderer.page(page, chrome));
    const focused = document.querySelectorAll('[autofocus]');
    expect(focused).toHaveLength(1);
    expect(focused[0]?.classList.contains('no')).toBe(true);
    expect(focused[0]?.querySelector('a')?.getAttribute('href')).toMatch(/^#\w/);
  });

  it('keeps what was typed, marks the box and joins it to the reason', () => {
    const document = page('question-number-fault');
    const box = document.querySelector('#answer');
    expect([box?.getAttribute('value'), box?.getAttribute('aria-invalid'), box?.getAttribute('aria-describedby')]).toEqual([
      '1.2 or 1.6',
      'true',
      'answer-why answer-hint',
    ]);
    expect(document.querySelector('#answer-why')?.text).toBe('“1.2 or 1.6” holds two numbers. Give one.');
    expect(page('return-fault').querySelector('#phrase')?.text).toBe('copper window gentle marble sunday');
    expect(
      page('question-options-fault')
        .querySelectorAll('[checked]')
        .map((input) => input.getAttribute('value')),
    ).toEqual(['c']);
  });
});

function page(name: string, change: (data: Record<string, unknown>) => void = () => {}): HTMLElement {
  const sample = samples.find((one) => one.name === name);
  if (sample === undefined) throw new Error(`There is no sample ${name}.`);
  const data = structuredClone(sample.page.data) as unknown as Record<string, unknown>;
  change(data);
  return read(renderer.page({ view: sample.page.view, data }, sample.chrome));
}

describe('single pages', () => {
  it('a question sends an answer only with a certainty: the button that Enter presses names none', () => {
    for (const name of ['question-options', 'question-number']) {
      const buttons = page(name).querySelectorAll('form button');
      expect(buttons.map((button) => button.getAttribute('value'))).toEqual([
        undefined,
        'sure',
        'fairly',
        'guessing',
        ...(name === 'question-number' ? ['unknown'] : []),
      ]);
      expect([buttons[0]?.hasAttribute('hidden'), buttons[0]?.getAttribute('name')]).toEqual([true, undefined]);
    }
  });

  it('a question prints its caution just above the title block, unfolded', () => {
    const caution = page('question-options').querySelector('.caution');
    expect(caution?.text).toContain('Never try this out.');
    expect(caution?.nextElementSibling?.classList.contains('titleblock')).toBe(true);
    expect(page('question-number-retry').querySelector('.caution')).toBeNull();
  });

  it('an outcome marks the right option and yours in words, not by colour alone', () => {
    const marks = page('outcome-options-no')
      .querySelectorAll('.reasons > li')
      .map((option) => option.querySelector('.sign-line')?.text.trim() ?? '');
    expect(marks).toEqual(['Yours, not right', '', 'Right', '']);
  });

  it('an outcome prints the MathML of the core and, before a second try, no working', () => {
    expect(page('outcome-number-no').querySelectorAll('math')).toHaveLength(2);
    expect(page('outcome-number-retry').querySelectorAll('math, .working')).toHaveLength(0);
  });

  it('the return phrase stands as numbered words and nothing else in their list', () => {
    expect(
      page('phrase')
        .querySelectorAll('.slip li')
        .map((word) => word.text.trim()),
    ).toEqual(['copper', 'window', 'gentle', 'marble', 'sunday', 'planet', 'kettle']);
  });

  it('an unencrypted connection is said in the footer, and only then', () => {
    expect(page('welcome-fault').querySelector('footer')?.text).toContain('This connection is not encrypted');
    expect(page('welcome').querySelector('footer')?.text).not.toContain('not encrypted');
  });
});

describe('hostile text', () => {
  const hostile = '<img src=x onerror="a()">{{7*7}}{{constructor}}\'"`</textarea></title>&amp;';
  /** Fields that choose a drawing or a place in our own files, never typed by anybody. */
  const ours = new Set(['sign', 'judged', 'look', 'layout', 'scripts', 'styles', 'view']);

  function spoil(value: unknown, key = ''): unknown {
    if (ours.has(key)) return value;
    if (typeof value === 'string') return key === 'mathml' ? value : hostile;
    if (Array.isArray(value)) return value.map((item) => (key === 'mathml' ? hostile : spoil(item, key)));
    if (typeof value === 'object' && value !== null)
      return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, spoil(item, name)]));
    return value;
  }

  it.each(named)('shows as text in every field of %s', (_name, { page: { view, data }, chrome }) => {
    const html = renderer.page({ view, data: spoil(data) as object }, spoil(chrome) as Chrome);
    expect(unbalanced(html)).toEqual([]);
    const document = read(html);
    expect(document.querySelectorAll('img, [onerror]')).toEqual([]);
    expect(document.querySelector('title')?.text).toContain(hostile);
    const shown = [document.querySelector('main')?.text, ...document.querySelectorAll('input').map((input) => input.getAttribute('value'))];
    expect(shown.some((text) => text?.includes(hostile))).toBe(true);
    for (const link of document.querySelectorAll('a[href], form[action]')) {
      expect(link.getAttribute('href') ?? link.getAttribute('action')).toMatch(/^(\/(?!\/)|#|https?:\/\/)/);
    }
    for (const field of document.querySelectorAll('input[value]'))
      expect(field.getAttribute('value')).toMatch(/^$|^[\w-]+$|<img src=x onerror="a\(\)">/);
  });

  it('never becomes an address that runs', () => {
    const bad = page('question-options', (data) => {
      data['titleBlock'] = (data['titleBlock'] as object[]).map((field) => ({ ...field, href: 'javascript:alert(1)' }));
      data['action'] = '//example.org/steal';
    });
    expect(bad.querySelector('.titleblock a')?.getAttribute('href')).toBe('#');
    expect(bad.querySelector('form')?.getAttribute('action')).toBe('#');
  });
});

describe('a field that is missing', () => {
  it.each([
    ['topicTitle', 'question-options'],
    ['options', 'question-options'],
    ['caution', 'question-options'],
    ['titleBlock', 'outcome-number-no'],
    ['explanation', 'outcome-number-no'],
    ['carryOn', 'now'],
    ['coming', 'now'],
  ])('%s is an error that names it, also where a template only asks whether it is there', (field, name) => {
    expect(() => page(name, (data) => delete data[field])).toThrow(new RegExp(`could not be drawn: "${field}" not defined`));
  });

  it('names the view that does not exist', () => {
    expect(() => renderer.page({ view: 'study/nothing', data: {} }, anyChrome)).toThrow('There is no view named study/nothing.');
  });
});

describe('templates', () => {
  it('are all used: each page has a sample and each partial is called', () => {
    const shown = new Set(samples.map(({ page }) => page.view as string));
    const pages = [...templates.keys()].filter((name) => !name.startsWith('partials/') && !name.startsWith('layouts/'));
    expect(pages.filter((name) => !shown.has(name))).toEqual([]);
    const text = [...templates.values()].join('\n');
    const partials = [...templates.keys()].filter((name) => name.startsWith('partials/')).map((name) => name.slice('partials/'.length));
    expect(partials.filter((name) => !new RegExp(`\\{\\{> ${name}[ }]`).test(text))).toEqual([]);
  });

  it.each([...templates])('%s has no raw output, quotes its attributes and passes addresses through the helper', (_name, source) => {
    const text = source.replace(/\{\{!.*?\}\}/gs, '');
    expect(text).not.toMatch(/\{\{\{|\{\{&/);
    // Mustaches may hold quotes of their own; what is left must be attributes in double quotes or without a value.
    const bare = text.replace(/\{\{.*?\}\}/gs, '§');
    for (const [tag] of bare.matchAll(/<[a-zA-Z][^>]*>/g)) {
      expect(tag.replace(/"[^"]*"/g, '""'), tag).toMatch(/^<[\w-]+(?:\s*§|\s+[\w:-]+(?:="")?)*\s*\/?>$/);
    }
    for (const [, value] of text.matchAll(/(?:href|action)="([^"]*)"/g))
      expect(value).toMatch(/^(?:[^{]*|#\{\{target\}\}|\{\{(?:address|asset) [\w.' -]+\}\})$/);
  });
});

describe('the style sheet', () => {
  const css = readFileSync(join(assets, 'rungwise.css'));

  it('is small: under 20 kB as it travels', () => {
    expect(gzipSync(css).length).toBeLessThan(20_000);
    expect(brotliCompressSync(css).length).toBeLessThan(20_000);
  });

  it('asks for the very font file that the pages load beforehand, by its fingerprint', () => {
    const hash = createHash('sha256')
      .update(readFileSync(join(assets, 'overpass.woff2')))
      .digest('hex')
      .slice(0, 8);
    expect(css.toString().match(/url\([^)]*\)/g)).toEqual([`url('overpass.woff2?v=${hash}')`]);
    expect(page('error').querySelector('link[rel=preload]')?.getAttribute('href')).toBe(`/assets/overpass.woff2?v=${hash}`);
  });

  it('has a rule for every class that templates use', () => {
    const sheet = ['rungwise.css', 'print-paper.css', 'class.css'].map((name) => readFileSync(join(assets, name), 'utf8')).join('\n');
    const quoted = [...templates.values(), readFileSync(join(assets, 'signs.svg'), 'utf8')].join('\n');
    const used = new Set(
      [...quoted.matchAll(/class="([^"]*)"/g)].flatMap(([, list]) =>
        String(list)
          .replace(/\{\{.*?\}\}/g, ' ')
          .split(/\s+/),
      ),
    );
    const marks = new Set(['', 'w', 'lv-', 'guess', 'warn', 'views']);
    expect([...used].filter((name) => !marks.has(name) && !new RegExp(`\\.${name}(?![\\w-])`).test(sheet))).toEqual([]);
  });
});
