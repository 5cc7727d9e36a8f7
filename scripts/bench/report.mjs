// From the rounds to the figures, and to the table that a person reads.

/** Share of the bare route's requests per second that the real one is meant to reach. */
const aim = 0.6;
const pairs = [
  { name: 'answer path', real: 'real answer', bare: 'bare answer' },
  { name: 'question page', real: 'real page', bare: 'bare page' },
  { name: 'home page', real: 'real home', bare: 'bare home' },
  { name: 'calculator', real: 'real calculator', bare: 'bare calculator' },
];

/** Share of a save's processor time that the bare transaction takes: a session, a token and a form to read are honest work besides. */
const saveAim = 0.4;

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

const medianOrNull = (values) => (values.some((value) => value === null) ? null : median(values));

const processorMs = ({ nodeMs, postgresMs }) => (nodeMs === null || postgresMs === null ? null : nodeMs + postgresMs);

/** At a fixed pace both routes do as many a second; what tells them apart is what a save costs. */
function paperSaves(rounds, targets) {
  const each = rounds.map((round) => {
    const [real, bare] = [processorMs(round['real save']), processorMs(round['bare save'])];
    return real === null || bare === null ? null : bare / real;
  });
  const { requestsPerSecond, p99Ms } = targets.find(({ what }) => what === 'real save');
  const failures = rounds.reduce((sum, round) => sum + round['real save'].others, 0);
  return { name: 'paper saves', ratio: medianOrNull(each), rounds: each, aim: saveAim, perSecond: requestsPerSecond, p99Ms, failures };
}

/**
 * @param {Record<string, object>[]} rounds for each round, what each target did in it
 * @returns {{ targets: object[], ratios: object[], papers: object }} medians; a ratio is the median of the rounds' own ratios
 */
export function summary(rounds) {
  const targets = Object.keys(rounds[0]).map((what) => {
    const of = (key) => medianOrNull(rounds.map((round) => round[what][key]));
    return {
      what,
      requestsPerSecond: of('perSecond'),
      p50Ms: of('p50'),
      p99Ms: of('p99'),
      nodeMs: of('nodeMs'),
      postgresMs: of('postgresMs'),
      bytes: of('bytes'),
    };
  });
  const ratios = pairs.map(({ name, real, bare }) => {
    const each = rounds.map((round) => round[real].perSecond / round[bare].perSecond);
    return { name, ratio: median(each), rounds: each, aim };
  });
  return { targets, ratios, papers: paperSaves(rounds, targets) };
}

const gridAimMs = 50;
const everybodyAimMs = 2000;

/** Sizes grow by a known factor: a cost that grows by less is one that no club outgrows. */
export function classLines({ grids, everybody, lists, questionsEach }) {
  const growth = (rows, of, index) =>
    index === 0 ? '' : `, ${(of(rows[index]) / of(rows[index - 1])).toFixed(2)} times that of ${rows[index - 1].size}`;
  return [
    ...grids.map(({ size, first, next }, index) => {
      const aim = size === 30 ? ` (aim ${gridAimMs})` : '';
      return `class grid of ${size}: ${first.toFixed(1)} ms when nothing is kept${growth(grids, (row) => row.first, index)}; ${next.toFixed(1)} ms after${aim}`;
    }),
    ...everybody.map(({ size, taken }, index) => {
      const aim = size === 10_000 ? ` (aim ${everybodyAimMs})` : '';
      return `everybody, ${size} by ${questionsEach}: ${taken.toFixed(0)} ms once a day${aim}${growth(everybody, (row) => row.taken, index)}`;
    }),
    ...lists.flatMap(({ size, ofClass, ofAll }, index) => [
      `bad questions of a class of 30, among ${size}: ${ofClass.toFixed(1)} ms`,
      `bad questions of everybody, ${size} with 40 answers each: ${ofAll.toFixed(0)} ms${growth(lists, (row) => row.ofAll, index)}`,
    ]),
  ].join('\n');
}

const number = (value, digits) => (value === null ? '-' : value.toFixed(digits));

/** @param {ReturnType<typeof summary> & { maths: { name: string, perSecond: number, aim: number }[] }} figures */
export function table({ targets, ratios, papers, maths, classes }) {
  const heads = ['', 'requests/s', 'p50 ms', 'p99 ms', 'Node ms', 'PostgreSQL ms', 'bytes'];
  const rows = targets.map((t) => [
    t.what,
    number(t.requestsPerSecond, 0),
    number(t.p50Ms, Number.isInteger(t.p50Ms) ? 0 : 1),
    number(t.p99Ms, Number.isInteger(t.p99Ms) ? 0 : 1),
    number(t.nodeMs, 3),
    number(t.postgresMs, 3),
    number(t.bytes, 0),
  ]);
  const width = heads.map((head, column) => Math.max(head.length, ...rows.map((row) => row[column].length)));
  const line = (cells) => cells.map((cell, column) => (column === 0 ? cell.padEnd(width[0]) : cell.padStart(width[column]))).join('  ');
  const shares = ratios.map(
    ({ name, ratio, rounds }) =>
      `${name.padEnd(14)} ${ratio.toFixed(2)} of the bare route (aim ${aim}; rounds ${rounds.map((one) => one.toFixed(2)).join(', ')})`,
  );
  const sat =
    `${papers.name.padEnd(14)} ${number(papers.ratio, 2)} of the bare transaction (aim ${papers.aim}, in processor time; ` +
    `rounds ${papers.rounds.map((one) => number(one, 2)).join(', ')}; ` +
    `${papers.perSecond.toFixed(0)} saves a second, p99 ${papers.p99Ms.toFixed(1)} ms, ${papers.failures} failures)`;
  const core = maths.map((one) => `${one.name.padEnd(14)} ${one.perSecond.toFixed(0)} a second on one core (aim ${one.aim})`);
  return [line(heads), ...rows.map(line), '', ...shares, sat, '', ...core, '', classLines(classes)].join('\n');
}
