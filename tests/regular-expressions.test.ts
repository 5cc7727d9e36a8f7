import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { projectFolder } from '../src/platform/project-folder.js';

/**
 * No text may keep the server busy by a regular expression that goes back over it again and again. Every one in the sources is looked
 * at by recheck, an outside checker: exactly where it can, else by searching for an attack. It runs in JavaScript alone, with a fixed
 * seed and limits in steps and not in seconds, so that it says the same on every machine.
 */

/** Those that take time by the square or worse, and what keeps their texts short. */
const bounded: Readonly<Record<string, string>> = {
  '/(?=(?:\\d{3})+$)(?!^)/g': 'the figures of one number, 20 at most (src/core/families/mathml.ts)',
  '/\\B(?=(\\d{3})+$)/g': 'the figures of one number, 20 at most (shared/format.ts)',
  '/^([-−+]?\\d[\\d,\\u202f\\u00a0 ]*(?:\\.\\d+)?)\\s*([A-Za-zµμΩ°%²/]*)$/u':
    'looked at only up to 40 letters (src/core/lint/quantities.ts)',
  '/^\\d*\\.?\\d*$/': 'a typed answer, 64 letters (shared/numeric-answer)',
  "/\\d[^\\d]*[^\\d.,'eE][^\\d]*\\d/": 'a typed answer, 64 letters (shared/numeric-answer)',
  '/([a-z]+) ?\\b(?:squared|sq)\\b/gi': 'a typed answer, 64 letters (shared/numeric-answer)',
  '/[ .,;!?]+$/': 'a typed answer, 64 letters (shared/numeric-answer)',
  '/=+$/': 'a check sum in base64 (src/platform/backup/sealing.ts)',
  '/^[^a-z]+|-+$/g': 'a name typed on one’s own command line (src/cli/new-pack.ts)',
};

/** Files that make one later than at loading, and what such a one looks like. */
const later: Readonly<Record<string, string>> = {
  // Of a route's own address.
  'src/web/plugins/session.ts': '/^\\/classes\\/[\\w-]+\\/people\\/[\\w-]+(\\?[\\w=&.,%+-]*)?$/',
};

const number = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?`;
const amount = String.raw`([-−]?\d+(?:[.,]\d+)?)\s*([A-Za-zµΩ°%]*)`;
/** The same for those that are put together from parts. */
const boundedOnes: Readonly<Record<string, string>> = {
  ...bounded,
  '/<symbol id="([\\w-]+)" class="([\\w-]+)" viewBox="([\\d. -]+)">(.*)<\\/symbol>/g':
    'our own file of signs, at the start (src/web/view-helpers.ts)',
  [`/^${number}$/i`]: 'an attribute of 20 letters (src/packs/drawings/allowed.ts)',
  [String.raw`/^(?:translate|rotate|scale)\(\s*${number}(?:[\s,]+${number}){0,2}\s*\)/`]:
    'an attribute of 400 letters (src/packs/drawings/allowed.ts)',
  [String.raw`/^(?:from )?${amount}\s*(?:to|[-–])\s*${amount}$/iu`]: 'looked at only up to 60 letters (src/core/lint/quantities.ts)',
  [String.raw`/^between ${amount}\s*and\s*${amount}$/iu`]: 'looked at only up to 60 letters (src/core/lint/quantities.ts)',
};

interface Found {
  /** As it is written, `/…/flags`. */
  text: string;
  file: string;
}

interface Sources {
  literals: Found[];
  /** Files that make one at run time, and how often. */
  made: Map<string, number>;
}

async function sources(): Promise<Sources> {
  const found: Sources = { literals: [], made: new Map() };
  for (const root of ['src', 'shared']) {
    const names = await readdir(join(projectFolder, root), { recursive: true });
    for (const name of names.filter((one) => one.endsWith('.ts') && !one.includes('generated'))) {
      const file = `${root}/${name}`;
      look(ts.createSourceFile(file, await readFile(join(projectFolder, file), 'utf8'), ts.ScriptTarget.ES2022, true), file, found);
    }
  }
  return found;
}

function look(node: ts.Node, file: string, found: Sources): void {
  if (ts.isRegularExpressionLiteral(node)) found.literals.push({ text: node.text, file });
  const makes = (ts.isNewExpression(node) || ts.isCallExpression(node)) && node.expression.getText() === 'RegExp';
  if (makes) found.made.set(file, (found.made.get(file) ?? 0) + 1);
  ts.forEachChild(node, (child) => look(child, file, found));
}

/** Those that a file makes while it is loaded. */
async function madeBy(file: string): Promise<Found[]> {
  const made: Found[] = [];
  const plain = globalThis.RegExp;
  const own = (): boolean => (new Error().stack ?? '').split('\n').some((line) => line.includes(`/${file}:`));
  vi.resetModules();
  globalThis.RegExp = new Proxy(plain, {
    construct(target, given: [string, string?]) {
      const one = new target(...given);
      if (own()) made.push({ text: String(one), file });
      return one;
    },
  });
  try {
    await import(join(projectFolder, file));
  } finally {
    globalThis.RegExp = plain;
  }
  return made;
}

/** Without a repetition that may go on for ever, a pattern takes as long as it is itself. */
const endless = (text: string): boolean => /[*+]|\{\d+,\}/.test(text.replace(/\\./g, '').replace(/\[[^\]]*\]/g, 'x'));

/** Seventy units to try at every number are more steps than the checker believes to be straight; its time is measured below. */
const isQuantity = (text: string): boolean => text.includes('|mbar|');

type Check = (source: string, flags: string, options: object) => { status: string; attack?: { pattern: string } };

describe('regular expressions', () => {
  let check: Check;
  beforeAll(async () => {
    vi.stubEnv('RECHECK_BACKEND', 'pure');
    ({ checkSync: check } = (await import('recheck')) as unknown as { checkSync: Check });
  });
  afterAll(() => vi.unstubAllEnvs());

  const options = {
    randomSeed: 20261128,
    timeout: null,
    incubationTimeout: null,
    attackTimeout: null,
    maxIteration: 2,
    maxInitialGenerationSize: 40,
    maxGenerationSize: 40,
    incubationLimit: 8_000,
    attackLimit: 500_000,
    // The exact way takes seconds for larger ones; those are searched.
    maxNFASize: 3000,
    maxAttackStringSize: 40_000,
  };
  const verdict = (text: string): string => {
    const at = text.lastIndexOf('/');
    return check(text.slice(1, at), text.slice(at + 1), options).status;
  };

  it('the checker finds what it is there for', () => {
    // The classic of OWASP's page on the subject, and one that is bad by the square.
    expect(['/^(a+)+$/', '/\\s+$/', '/^[a-z]+$/'].map(verdict)).toEqual(['vulnerable', 'vulnerable', 'safe']);
  });

  it('in the sources take time in proportion to their text, but for those whose text is short', async () => {
    const { literals, made } = await sources();
    expect(literals.length).toBeGreaterThan(300);
    const built: Found[] = [];
    for (const [file, count] of made) {
      const sample = later[file];
      const seen = sample === undefined ? await madeBy(file) : [{ text: sample, file }];
      expect(seen.length, `${file} makes a pattern only when it is called, so that it cannot be looked at`).toBeGreaterThanOrEqual(count);
      built.push(...seen);
    }
    const all = new Map([...literals, ...built].map((one) => [one.text, one]));
    const bad = [...all.values()].filter(
      ({ text }) => !Object.hasOwn(boundedOnes, text) && !isQuantity(text) && endless(text) && verdict(text) !== 'safe',
    );
    expect(bad.map(({ text, file }) => `${file}: ${text}`)).toEqual([]);
    // Whoever mends one takes it off the list.
    expect(Object.keys(boundedOnes).filter((text) => !all.has(text))).toEqual([]);
    expect(Object.keys(bounded).filter((text) => verdict(text) === 'safe')).toEqual([]);
  }, 240_000);

  it('the one that finds quantities in every text of a page takes 100 times as long for 100 times the text', async () => {
    const { quantities } = await import('../src/web/view-helpers.js');
    const cost = (text: string): number => {
      const start = process.cpuUsage();
      quantities(text);
      return process.cpuUsage(start).user / 1000;
    };
    // A text of a pack may have 10,000 letters. By the square, the long ones would take over ten seconds each.
    for (const piece of ['0 ', '1\u00a0', '+1\u202f', '1.1–1.1', '1'])
      expect([piece, cost(piece.repeat(400_000 / piece.length)) < 2000]).toEqual([piece, true]);
  });
});
