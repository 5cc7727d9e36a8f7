import { parseArgs } from 'node:util';
import { recordChange } from '../audit/index.js';
import type { Pack } from '../core/pack.js';
import { examinePath, packsService, refusalWords, type PackPlan } from '../packs/index.js';
import type { Db } from '../platform/db.js';
import { SetUpError } from '../platform/set-up-error.js';
import { enrolAll } from '../study/index.js';
import type { CommandIo } from './command.js';
import { withDatabase } from './with-database.js';

const usage = 'Use: rungwise add <pack folder or ZIP file> [--dry-run] [--json]';

/**
 * `rungwise add <folder or ZIP file> [--dry-run] [--json]`: checks a pack and adds it to the bank of the database that the server uses,
 * running or not. Says on standard error how far it is, and on standard output what was changed, or with --dry-run what would be.
 * Answers 0 when it is in the bank, 1 when it has errors or cannot be taken, 2 when it could not be tried.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const asked = understood(args);
  if (typeof asked === 'string') {
    io.err(`${asked}\n${usage}`);
    return 2;
  }
  io.err(`Reading and checking ${asked.path} …`);
  const { report, pack } = await examinePath(asked.path);
  if (report.findings.some(({ rule }) => rule === 'no-folder')) {
    io.err(report.findings[0]?.message ?? '');
    return 2;
  }
  const errors = report.findings.filter(({ level }) => level === 'error');
  if (pack === null) {
    for (const { file, line, column, message } of errors.slice(0, 20)) io.err(`  ${file}:${line}:${column}  ${message}`);
    if (errors.length > 20) io.err(`  and ${errors.length - 20} more: npx rungwise check`);
    io.err('Nothing was changed. Mend the errors and try again.');
    if (asked.json) io.out(JSON.stringify({ state: 'errors', errors }));
    return 1;
  }
  try {
    const plan = await withDatabase(io, async (db) => {
      io.err('Comparing with what is there …');
      const packs = packsService({ db, enrolAll });
      if (await packs.comesWithServer(pack.head.id)) return null;
      return asked.dryRun ? await packs.plan(pack) : await addAndNote(db, packs, pack);
    });
    return told(plan, pack.head, asked, io);
  } catch (error) {
    io.err(error instanceof SetUpError ? `${error.message}\n${error.advice}` : `The database could not be used: ${String(error)}`);
    return 2;
  }
}

/** Adds it, and writes that down where administrators read what was changed. */
async function addAndNote(db: Db, packs: ReturnType<typeof packsService>, pack: Pack): Promise<PackPlan> {
  const loaded = await packs.load(pack, 'added');
  if (loaded.state !== 'unchanged' && loaded.state !== 'refused')
    await recordChange(db.pool, new Date(), {
      personId: null,
      role: 'command',
      what: 'adds a pack to the bank',
      about: { pack: pack.head.id },
    });
  return loaded;
}

interface Asked {
  path: string;
  dryRun: boolean;
  json: boolean;
}

function understood(args: readonly string[]): Asked | string {
  try {
    const options = { json: { type: 'boolean', default: false }, 'dry-run': { type: 'boolean', default: false } } as const;
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    const [path, ...more] = positionals;
    if (path === undefined || path === '' || path.includes('\0')) return 'Name the folder or the ZIP file of the pack.';
    return more.length > 0 ? 'One pack is added at a time.' : { path, dryRun: values['dry-run'], json: values.json };
  } catch (error) {
    return error instanceof Error ? (error.message.split('\n')[0] ?? '') : 'The command was not understood.';
  }
}

function told(plan: PackPlan | null, head: { id: string; version: string }, { dryRun, json }: Asked, io: CommandIo): number {
  if (plan === null) {
    io.err(`The id "${head.id}" belongs to a pack that comes with the server. Give your pack an id of its own in pack.yaml.`);
    if (json) io.out(JSON.stringify({ state: 'taken', id: head.id }));
    return 1;
  }
  if (json) io.out(JSON.stringify({ id: head.id, dryRun, ...plan }));
  else io.out(words(plan, head, dryRun));
  return plan.state === 'refused' ? 1 : 0;
}

function words(plan: PackPlan, { id, version }: { id: string; version: string }, dryRun: boolean): string {
  if (plan.state === 'unchanged') return `${id} ${version} is in the bank already, word for word.`;
  if (plan.state === 'refused') {
    const lines = plan.refused.map(({ code, why }) => `  ${code}: ${refusalWords[why]}.`);
    return [`${id} ${version} cannot be taken, and nothing was changed:`, ...lines].join('\n');
  }
  const kept = plan.changed.filter(({ keeps }) => keeps).length;
  const counts: [number, string][] = [
    [plan.added.length, 'new'],
    [kept, 'reworded, and remembered as before'],
    [plan.changed.length - kept, 'changed, and asked afresh'],
    [plan.returned.length, 'back again'],
    [plan.retired.length, 'retired'],
  ];
  const list = counts.filter(([count]) => count > 0).map(([count, what]) => `  ${count} ${what}`);
  const verdict = dryRun ? 'would be added' : 'is in the bank';
  return [`${id} ${version} ${verdict}${plan.before === null ? '' : ` in place of ${plan.before}`}.`, ...list].join('\n');
}
