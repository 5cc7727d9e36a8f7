import { parseArgs } from 'node:util';
import { learnerKinds, type LearnerKind } from '../core/simulation/learners.js';
import { policyNames, settings, simulate, type Outcome, type PolicyName, type SettingName } from '../core/simulation/run.js';
import type { Command, CommandIo } from './command.js';

/** `simulate`: seeded learners through the planner, against two plain policies. */

const usage = 'npx rungwise simulate [--learners <count>] [--setting <name>] [--json]';

interface Row {
  setting: SettingName;
  kind: LearnerKind;
  policy: PolicyName;
  learners: number;
  recalled: Spread;
  pass: Spread;
  neverSeen: number;
}

interface Spread {
  mean: number;
  sd: number;
  /** Mean of the tenth that did worst. */
  worstTenth: number;
}

export const run: Command = (args, io) => Promise.resolve(runNow(args, io));

function runNow(args: string[], io: CommandIo): number {
  let learners: number;
  let chosen: SettingName[];
  let json: boolean;
  try {
    const { values } = parseArgs({
      args,
      options: { learners: { type: 'string', default: '100' }, setting: { type: 'string' }, json: { type: 'boolean', default: false } },
    });
    learners = Number(values.learners);
    if (!Number.isInteger(learners) || learners < 1 || learners > 10_000) throw new Error('--learners is a whole number from 1 to 10,000');
    const names = Object.keys(settings) as SettingName[];
    chosen = values.setting === undefined ? names : names.filter((name) => name === values.setting);
    if (chosen.length === 0) throw new Error(`--setting is one of ${names.join(', ')}`);
    json = values.json;
  } catch (error) {
    io.err(`${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
  const rows: Row[] = [];
  const total = chosen.length * learnerKinds.length * policyNames.length;
  for (const setting of chosen)
    for (const kind of learnerKinds)
      for (const policy of policyNames) {
        rows.push(rowOf(setting, kind, policy, learners));
        progress(rows.length, total);
      }
  io.out(json ? JSON.stringify({ learners, rows }) : table(rows));
  return 0;
}

function rowOf(setting: SettingName, kind: LearnerKind, policy: PolicyName, learners: number): Row {
  const outcomes = Array.from({ length: learners }, (_, index) => simulate(kind, policy, settings[setting], index + 1));
  const spread = (of: (outcome: Outcome) => number): Spread => spreadOf(outcomes.map(of));
  return {
    setting,
    kind,
    policy,
    learners,
    recalled: spread(({ recalled }) => recalled),
    pass: spread(({ pass }) => pass),
    neverSeen: spread(({ neverSeen }) => neverSeen).mean,
  };
}

function spreadOf(values: readonly number[]): Spread {
  const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
  const middle = mean(values);
  const sorted = [...values].sort((a, b) => a - b);
  return {
    mean: middle,
    sd: values.length < 2 ? 0 : Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1)),
    worstTenth: mean(sorted.slice(0, Math.max(1, Math.ceil(values.length / 10)))),
  };
}

/** A bar on a terminal; nothing where nobody watches. */
function progress(done: number, total: number): void {
  if (!process.stderr.isTTY) return;
  const width = 30;
  const full = Math.round((done / total) * width);
  process.stderr.write(`\r[${'#'.repeat(full)}${'.'.repeat(width - full)}] ${done} of ${total}${done === total ? '\n' : ''}`);
}

function table(rows: readonly Row[]): string {
  const head = ['setting', 'learners', 'policy', 'recalled of 300', 'sd', 'worst tenth', 'passes', 'worst tenth', 'never seen'];
  const lines = rows.map(({ setting, kind, policy, recalled, pass, neverSeen }) => [
    setting,
    kind,
    policy,
    recalled.mean.toFixed(1),
    recalled.sd.toFixed(1),
    recalled.worstTenth.toFixed(1),
    pass.mean.toFixed(3),
    pass.worstTenth.toFixed(3),
    neverSeen.toFixed(0),
  ]);
  const widths = head.map((title, column) => Math.max(title.length, ...lines.map((line) => (line[column] as string).length)));
  return [head, ...lines]
    .map((line) =>
      line.map((cell, column) => (column < 3 ? cell.padEnd(widths[column] as number) : cell.padStart(widths[column] as number))).join('  '),
    )
    .join('\n');
}
