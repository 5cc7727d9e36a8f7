import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import Handlebars from 'handlebars';
import type { Chrome } from '../../core/page-parts.js';
import { RungwiseError } from '../../core/errors.js';
import { address, drawing, drawings, mathml, quantities } from '../view-helpers.js';

/**
 * Pages from Handlebars templates, all read and compiled once at the start. Templates are strict: a field that a page lacks is an error
 * that names it, also inside `#if` and `#each`, never a blank.
 */
export interface Renderer {
  /** The whole HTML document of a page inside the layout. Throws `internal` naming the view and the missing field. */
  page(page: { view: string; data: object }, chrome: Chrome): string;
}

type Template = Handlebars.TemplateDelegate;

/**
 * Reads `views` (layouts, partials and pages) and what it needs of `assets` (signs, and the fingerprints of all files there).
 * Throws when a folder cannot be read or a template does not parse, with the file's name.
 */
export async function loadViews(views: string, assets: string = join(views, '..', 'public')): Promise<Renderer> {
  const [sources, versions, signs] = await Promise.all([
    readTemplates(views),
    fingerprints(assets),
    readFile(join(assets, 'signs.svg'), 'utf8'),
  ]);
  const engine = Handlebars.create();
  registerHelpers(engine, versions, signs);
  const pages = new Map<string, Template>();
  for (const [name, source] of sources) {
    const template = compile(engine, name, source);
    if (name.startsWith('partials/')) engine.registerPartial(name.slice('partials/'.length), template);
    else pages.set(name, template);
  }
  return { page: (page, chrome) => draw(pages, page, chrome) };
}

function draw(pages: Map<string, Template>, page: { view: string; data: object }, chrome: Chrome): string {
  const view = pages.get(page.view);
  const layout = pages.get('layouts/main');
  if (!view || !layout) throw new RungwiseError('internal', `There is no view named ${page.view}.`);
  try {
    const body = new Handlebars.SafeString(view(page.data));
    return layout({ ...chrome, body });
  } catch (cause) {
    throw new RungwiseError('internal', `View ${page.view} could not be drawn: ${cause instanceof Error ? cause.message : String(cause)}`);
  }
}

/** Every `.hbs` file by its name without the ending, such as `study/question`, and its text without the indentation of lines. */
async function readTemplates(folder: string): Promise<[string, string][]> {
  const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.hbs')).sort();
  return Promise.all(
    names.map(async (name): Promise<[string, string]> => {
      const text = await readFile(join(folder, name), 'utf8');
      return [name.slice(0, -'.hbs'.length).split(sep).join('/'), text.replace(/\n[ \t]+/g, '\n')];
    }),
  );
}

/** The first eight hexadecimal figures of each file's SHA-256: a changed file gets a new address, so browsers may keep the old one for good. */
async function fingerprints(folder: string): Promise<Map<string, string>> {
  const files = (await readdir(folder, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile());
  const pairs = await Promise.all(
    files.map(async (entry): Promise<[string, string]> => {
      const path = join(entry.parentPath, entry.name);
      const hash = createHash('sha256')
        .update(await readFile(path))
        .digest('hex');
      return [relative(folder, path).split(sep).join('/'), hash.slice(0, 8)];
    }),
  );
  return new Map(pairs);
}

const HELPERS = ['quantities', 'address', 'mathml', 'shapes', 'sign', 'asset'] as const;

function registerHelpers(engine: typeof Handlebars, versions: Map<string, string>, signs: string): void {
  const signByName = drawings(signs);
  const addresses = new Map(
    [...versions].map(([name, version]) => [name, new Handlebars.SafeString(`/assets/${encodeURI(name)}?v=${version}`)]),
  );
  const helpers: Record<(typeof HELPERS)[number], (text: string) => unknown> = {
    quantities,
    address,
    mathml,
    shapes: drawing,
    sign: (name) => known(signByName.get(name), `sign ${name} in signs.svg`),
    asset: (name) => known(addresses.get(name), `file ${name} among the assets`),
  };
  engine.registerHelper(helpers);
}

function known<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`there is no ${what}`);
  return value;
}

function compile(engine: typeof Handlebars, name: string, source: string): Template {
  const knownHelpers = Object.fromEntries(HELPERS.map((helper) => [helper, true]));
  try {
    const tree = engine.parse(source, { srcName: name });
    new StrictEverywhere().accept(tree);
    return engine.compile(tree, { strict: true, knownHelpers, knownHelpersOnly: true, preventIndent: true });
  } catch (cause) {
    throw new RungwiseError('internal', `views/${name}.hbs: ${cause instanceof Error ? cause.message : String(cause)}`);
  }
}

/** Handlebars' own strict mode lets a missing field pass as the argument of a helper or block; marking every path closes that gap. */
class StrictEverywhere extends Handlebars.Visitor {
  override PathExpression(path: hbs.AST.PathExpression): void {
    (path as hbs.AST.PathExpression & { strict?: boolean }).strict = true;
  }
}
