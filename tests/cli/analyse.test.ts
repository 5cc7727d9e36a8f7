import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/analyse.js';
import { expected, lsat6, type Expected } from '../support/item-analysis.js';

/** `rungwise analyse`: figures of a table of answers. */

const data = (name: string): string => new URL(`../data/item-analysis/${name}`, import.meta.url).pathname;

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rungwise-analyse-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function file(name: string, content: string | Uint8Array): Promise<string> {
  await writeFile(join(folder, name), content);
  return join(folder, name);
}

async function said(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  const [out, err]: [string[], string[]] = [[], []];
  const status = await run(args, { out: (text) => void out.push(text), err: (text) => void err.push(text) });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

interface Printed {
  paper: Record<string, number | null>;
  questions: (Record<string, number | null> & {
    id: string;
    options: { option: string | null; count: number; itemTotal: number | null; itemRest: number | null }[];
  })[];
  notes: { question: string | null; options: (string | null)[] | null; values: string[]; why: string }[];
}

async function json(...args: string[]): Promise<Printed> {
  const { status, out, err } = await said(...args, '--json');
  expect([status, err]).toEqual([0, '']);
  return JSON.parse(out) as Printed;
}

/** Names of the figures that are not as expected, to 1e-12; what is null must be null. */
function differing({ paper, questions }: Printed, { test, items }: Expected): string[] {
  const pairs: [string, number | null | undefined, number | null][] = Object.entries({
    n: test.n,
    k: test.k,
    mean: test.meanScore,
    sd: test.sd_n1,
    kr20: test.kr20,
    sem: test.sem_n1,
  }).map(([name, value]) => [name, paper[name], value]);
  items.forEach((item, place) => {
    const ours = questions[place];
    const figures = {
      n: item.n,
      facility: item.facility,
      facilityLow: item.facilityWilson95?.[0] ?? null,
      facilityHigh: item.facilityWilson95?.[1] ?? null,
      itemTotal: item.pointBiserialItemTotal,
      itemRest: item.pointBiserialItemRest,
      upperLower27: item.discrimination27.inclusive,
      alphaIfDropped: item.alphaIfDropped,
    };
    for (const [name, value] of Object.entries(figures)) pairs.push([`${item.item} ${name}`, ours?.[name], value]);
    for (const [at, option] of (item.options ?? []).entries()) {
      const own = ours?.options[at];
      pairs.push([`${item.item} ${option.option} count`, own?.count, option.count]);
      pairs.push([`${item.item} ${option.option} with total`, own?.itemTotal, option.pointBiserialTotal]);
      pairs.push([`${item.item} ${option.option} with rest`, own?.itemRest, option.pointBiserialRest]);
    }
  });
  const wrong = ([, ours, theirs]: (typeof pairs)[number]): boolean =>
    typeof ours === 'number' && theirs !== null ? Math.abs(ours - theirs) >= 1e-12 : ours !== theirs;
  return pairs.filter(wrong).map(([name, ours, theirs]) => `${name}: ${ours} for ${theirs}`);
}

/** Questions with their options, in order. */
const shapeOf = (printed: Printed) => printed.questions.map(({ id, options }) => [id, options.map(({ option }) => option)]);
const shapeExpected = ({ items }: Expected) => items.map(({ item, options = [] }) => [item, options.map(({ option }) => option)]);

const edge = [data('edge12-raw.csv'), '--key', data('edge12-key.csv')];

describe('rungwise analyse --json', () => {
  it('prints the published figures, for options with a key and for 0 and 1 without', async () => {
    const { questions, rows } = lsat6();
    const table = ['candidate', ...questions.map(({ id }) => id)].join(',');
    const answers = rows.map((row, index) => `C${index + 1},${row.join(',')}`).join('\n');
    for (const [printed, exact] of [
      [await json(...edge), expected.edge12.missingAsWrong],
      [await json(data('flat4-raw.csv'), '--key', data('flat4-key.csv')), expected.flat4.missingAsWrong],
      [await json(await file('lsat6.csv', `${table}\n${answers}\n`)), expected.lsat6.missingAsWrong],
    ] as const) {
      expect(differing(printed, exact)).toEqual([]);
      expect(shapeOf(printed)).toEqual(shapeExpected(exact));
    }
  });

  it('prints what was promised, in that order, and why a figure is null', async () => {
    const printed = await json(...edge);
    expect(Object.keys(printed)).toEqual(['paper', 'questions', 'notes']);
    expect(Object.keys(printed.paper)).toEqual(['n', 'k', 'mean', 'sd', 'kr20', 'sem']);
    expect(Object.keys(printed.questions[0] ?? {}).join(' ')).toBe(
      'id n facility facilityLow facilityHigh itemTotal itemRest upperLower27 alphaIfDropped options',
    );
    expect(Object.keys(printed.questions[0]?.options[0] ?? {})).toEqual(['option', 'count', 'itemTotal', 'itemRest']);
    expect(printed.notes.slice(0, 2)).toEqual([
      { question: 'q1', options: null, values: ['itemTotal', 'itemRest'], why: 'everybody is right' },
      { question: 'q1', options: ['A'], values: ['itemTotal', 'itemRest'], why: 'everybody chose it' },
    ]);
    expect(printed.notes).toContainEqual({
      question: 'q2',
      options: [null],
      values: ['itemTotal', 'itemRest'],
      why: 'nobody left it blank',
    });
  });

  it.each([
    ['a mark at the beginning', (text: string) => `\uFEFF${text}`],
    ['semicolons', (text: string) => text.replaceAll(',', ';')],
    ['tabs', (text: string) => text.replaceAll(',', '\t')],
    ['CR LF', (text: string) => text.replaceAll('\n', '\r\n')],
    ['quotation marks', (text: string) => text.replace(/[^,\n]+/g, '"$&"')],
    ['UTF-16', (text: string) => Buffer.from(`\uFEFF${text}`, 'utf16le')],
  ])('takes %s, as spreadsheets write them', async (_name, change) => {
    const answers = 'candidate,q1,q2\nOdo,A,B\nTansy,,A\nWilf,B,A\n';
    const key = 'item,key,options\nq1,A,A B\nq2,A,A B\n';
    const printed = await json(await file('a.csv', change(answers)), '--key', await file('k.csv', change(key)));
    expect(printed.questions.map(({ id, facility, options }) => [id, facility, options.map(({ count }) => count)])).toEqual([
      ['q1', 1 / 3, [1, 1, 1]],
      ['q2', 2 / 3, [2, 1, 0]],
    ]);
  });

  it('gives an empty class its size and nothing else', async () => {
    const printed = await json(await file('empty.csv', 'candidate,q1,q2\n'));
    expect(printed.paper).toEqual({ n: 0, k: 2, mean: null, sd: null, kr20: null, sem: null });
    expect(printed.notes[0]).toEqual({ question: null, options: null, values: ['mean'], why: 'there are no candidates' });
  });
});

describe('rungwise analyse', () => {
  it('prints a table, what was chosen, the signs and what to do, and what is too little to tell', async () => {
    const { status, out } = await said(...edge);
    expect(status).toBe(0);
    expect(out).toContain('12 candidates, 8 questions. Mean 4.42, standard deviation 1.62.');
    expect(out).toMatch(/^Reliability \(KR-20\): 0\.47 \(−0\.14 to 0\.82\)\. Too few answers to tell whether/m);
    expect(out).toMatch(/^q4 +6 of 12 +25 % to 75 % +−0\.48 +−0\.68 +−0\.90 to −0\.17 +−0\.55 +0\.77$/m);
    expect(out).toMatch(/^q7 +A 1 \(−0\.15\), B 0, C\* 9 \(0\.44\), D 1 \(−0\.15\), blank 1 \(−0\.38\)$/m);
    expect(out).toMatch(/^q2: Fewer are right than by guessing[^\n]*\n {2}Check the key first/m);
    expect(out).toContain('Too few answers to tell: q1, q3, q5, q6, q7 and q8.');
    expect(out).toContain('q1: itemTotal and itemRest, since everybody is right');
  });

  it('prints counts and nothing else for fewer than ten', async () => {
    const { out } = await said(data('flat4-raw.csv'), '--key', data('flat4-key.csv'));
    expect(out).toContain('Reliability (KR-20): Too few to tell: 4 candidates, and it takes 10.');
    expect(out).toMatch(/^question +right +95 %$/m);
    expect(out).not.toMatch(/−1|upper-lower/);
  });

  it('names file, line and fault, and answers 2', async () => {
    const answers = await file('bad.csv', 'candidate,q1,q2\nOdo,A,B\n"Tan\nsy",A\nWilf,A,E\n');
    const key = await file('good-key.csv', 'item,key,options\nq1,A,A B\nq2,A,A B\n');
    const { status, out, err } = await said(answers, '--key', key, '--json');
    expect([status, out]).toEqual([2, '']);
    // The name that is broken over two lines begins in line 3, so the row after it is in line 5.
    expect(err.split('\n')).toEqual([
      `${answers}:3: This row has 1 answers for 2 questions. A blank is an empty cell.`,
      `${answers}:5: “q2” has “E”; its options are A B.`,
    ]);
    const other = await said(answers, '--key', await file('bad-key.csv', 'item,key,options\nq1,C,A B\n'));
    expect(other.err).toBe(`${join(folder, 'bad-key.csv')}:2: The key of “q1” is “C”, which is none of its options A B.`);
    expect((await said(await file('open.csv', 'candidate,q1\n"Odo,1\n'))).err).toContain('A quotation mark is opened and never closed.');
  });

  it.each([
    ['no file', [], 'give one file with the answers'],
    ['two files', ['a', 'b'], 'give one file with the answers'],
    ['a file that is not there', ['/nowhere/answers.csv'], '/nowhere/answers.csv: there is no such file'],
    ['a folder', ['/'], '/: this is a folder; name a file'],
    ['an unknown option', ['--what'], '--what'],
  ])('answers 2 and says how it is used with %s', async (_name, args, why) => {
    const { status, err } = await said(...args);
    expect([status, err]).toEqual([2, expect.stringContaining(why)]);
  });

  it('refuses what is too large, by size, by rows and by cells', async () => {
    expect((await said(await file('large.csv', Buffer.alloc(20 * 2 ** 20 + 1, 'a')))).err).toContain('20 MB is the most');
    const long = `candidate,q1\n${'x,1\n'.repeat(100_001)}`;
    expect((await said(await file('long.csv', long))).err).toContain('There are more than 100000 rows.');
    const wide = `candidate,${Array.from({ length: 900 }, (_, index) => `q${index}`).join(',')}\n${`,${'1,'.repeat(899)}1\n`.repeat(2300)}`;
    expect((await said(await file('wide.csv', wide))).err).toContain('2000000 cells are the most');
  });
});
