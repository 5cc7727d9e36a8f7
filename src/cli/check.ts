import { parseArgs } from 'node:util';
import { readPackFolderApart, type Finding, type ReadApart } from '../packs/index.js';
import type { CommandIo } from './command.js';

const usage = 'Use: rungwise check <pack folder> [--json]';

/**
 * `rungwise check <pack folder> [--json]`: everything that is wrong with a pack, and how often each objective is asked.
 * Answers 0 for a sound pack, 1 for one with errors, 2 when there is no such folder or the command is mistyped. Needs no database;
 * the pack is read in a process of its own, so that whatever is in it, the answer comes within 10 seconds.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const asked = understood(args);
  if (typeof asked === 'string') return refused('usage', `${asked}\n${usage}`, args.includes('--json'), io);
  let read: ReadApart;
  try {
    read = await readPackFolderApart(asked.folder);
  } catch (error) {
    return refused('not-read', `The pack could not be read: ${error instanceof Error ? error.message : 'unknown reason'}.`, asked.json, io);
  }
  const unusable = read.findings.find(({ rule }) => rule === 'no-folder');
  if (unusable) return refused('no-folder', `${shownFolder(asked.folder)}: ${unusable.message}`, asked.json, io);
  io.out(asked.json ? asJson(read) : asText(read));
  return read.findings.some(({ level }) => level === 'error') ? 1 : 0;
}

function understood(args: readonly string[]): { folder: string; json: boolean } | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { json: { type: 'boolean', default: false } },
      allowPositionals: true,
    });
    const [folder, ...more] = positionals;
    if (folder === undefined || folder === '') return 'Name the folder of the pack to check.';
    if (more.length > 0) return `One folder is checked at a time; ${more.length + 1} were named.`;
    return folder.includes('\0') ? 'The name of a folder cannot hold the character U+0000.' : { folder, json: values.json };
  } catch (error) {
    return error instanceof Error ? firstSentence(error.message) : 'The command was not understood.';
  }
}

function firstSentence(text: string): string {
  return `${text.split(/\. |\n/)[0]}.`;
}

/** With --json there is one document on standard output even then. */
function refused(rule: string, message: string, json: boolean, io: CommandIo): number {
  io.err(message);
  const finding: Finding = { level: 'error', rule, file: '.', line: 1, column: 1, path: '', message: message.split('\n')[0] ?? '' };
  if (json) io.out(asJson({ findings: [finding], head: null, coverage: [] }));
  return 2;
}

function asJson({ findings, head, coverage }: ReadApart): string {
  const of = (wanted: Finding['level']) => findings.filter(({ level }) => level === wanted).map(({ level: _level, ...rest }) => rest);
  const pack = { id: head?.id ?? null, version: head?.version ?? null };
  return JSON.stringify({ pack, errors: of('error'), warnings: of('warning'), coverage });
}

function asText({ findings, head, coverage }: ReadApart): string {
  const lines: string[] = [];
  let file = '';
  for (const finding of findings) {
    if (finding.file !== file) lines.push(...(file === '' ? [] : ['']), finding.file);
    file = finding.file;
    const mark = finding.level === 'warning' ? 'warning: ' : '';
    lines.push(`  ${finding.file}:${finding.line}:${finding.column}  ${mark}${finding.message} (${finding.rule})`);
  }
  if (findings.length > 0) lines.push('');
  const errors = findings.filter(({ level }) => level === 'error').length;
  const warnings = findings.length - errors;
  const name = head ? `${head.id} ${head.version}` : 'The pack';
  lines.push(
    `${name}: ${counted(errors, 'error')}, ${counted(warnings, 'warning')}. ${errors > 0 ? 'It cannot be loaded until the errors are mended.' : 'It can be loaded.'}`,
  );
  lines.push(coverageLine(coverage));
  return lines.join('\n');
}

function coverageLine(coverage: ReadApart['coverage']): string {
  const questions = coverage.reduce((sum, line) => sum + line.questions, 0);
  const unasked = coverage.filter((line) => line.questions + line.families === 0).map(({ objective }) => objective);
  const rest = unasked.length > 12 ? ` and ${unasked.length - 12} more` : '';
  const missing = unasked.length === 0 ? '' : `; nothing asks about ${unasked.slice(0, 12).join(', ')}${rest}`;
  const withFamilies = coverage.filter((line) => line.families > 0).length;
  return `Coverage: ${counted(coverage.length, 'objective')}, ${counted(questions, 'question')}, families for ${withFamilies}${missing}.`;
}

function counted(number: number, what: string): string {
  return `${number === 0 ? 'no' : number} ${what}${number === 1 ? '' : 's'}`;
}

function shownFolder(folder: string): string {
  return JSON.stringify(folder.slice(0, 200));
}
