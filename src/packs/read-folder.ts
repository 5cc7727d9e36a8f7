import type { z } from 'zod';
import { checkDraft, coverageOf, type Coverage } from '../core/pack-checks.js';
import { listKinds, type DraftEntry, type ListKind, type PackDraft, type PackFault } from '../core/pack-draft.js';
import { packFileSchemas, type Pack, type PackHead } from '../core/pack.js';
import { readFolder } from './reading/folder.js';
import { inOrder, pathText, type Finding } from './reading/finding.js';
import { readFile, type Part } from './reading/parts.js';
import { entryLimits, yamlLimits } from './yaml/limits.js';

export type { Finding } from './reading/finding.js';

export interface ReadPack {
  /** Null when there is any error. */
  pack: Pack | null;
  /** Errors and warnings in the order of files and lines; 200 at most, the last of which then says so. */
  findings: Finding[];
  /** From pack.yaml, when that much is sound. */
  head: { id: string; version: string } | null;
  coverage: Coverage[];
}

export interface ReadOptions {
  /**
   * Whether every family is drawn from in every region, which takes most of the time. False is for packs that were checked before,
   * such as when the server starts and only wants to know whether anything changed.
   */
  tryFamilies?: boolean;
}

/**
 * Reads a pack folder: every *.yaml and *.yml in it, each with one top-level key out of `packFileSchemas`, and every *.svg. All faults are told at
 * once, each with file, line and column. Never throws for anything in the folder. Time and memory are bounded by yaml/limits.ts,
 * but a hostile pack can still take seconds: read the packs of strangers with `readPackFolderApart`.
 */
export async function readPackFolder(folder: string, { tryFamilies = true }: ReadOptions = {}): Promise<ReadPack> {
  const content = await readFolder(folder);
  if (!content.readable) return { pack: null, findings: content.findings, head: null, coverage: [] };
  const parts: Part[] = [];
  const budget = { pieces: yamlLimits.piecesTogether };
  const findings = [...content.findings];
  let complete = findings.length === 0;
  for (const file of content.files) {
    if (budget.pieces < 0) break;
    const reading = readFile(file, budget);
    parts.push(...reading.parts);
    findings.push(...reading.findings);
    complete &&= reading.complete;
  }
  findings.push(...headFindings(parts, complete));
  const draft = { head: headOf(parts), ...entriesOf(parts) };
  const tooMany = listKinds.flatMap((kind) => overfull(kind, draft[kind]));
  findings.push(...tooMany);
  if (tooMany.length === 0) findings.push(...checkDraft(draft, { complete, tryFamilies }).map((fault) => located(fault, draft)));
  const sorted = inOrder(findings);
  const { head } = draft;
  return {
    pack: sorted.some(({ level }) => level === 'error') ? null : packOf(draft),
    findings: sorted,
    head: head && { id: head.id, version: head.version },
    coverage: coverageOf(draft),
  };
}

/** An entry that knows its file, and its number in that file's list. */
interface Entry<T> extends DraftEntry<T> {
  part: Part;
  index: number;
}

type Draft = PackDraft & Record<ListKind, Entry<unknown>[]>;

function headOf(parts: Part[]): PackHead | null {
  return (parts.find(({ kind }) => kind === 'pack')?.whole ?? null) as PackHead | null;
}

function entriesOf(parts: Part[]): Omit<Draft, 'head'> {
  const lists = listKinds.map((kind) => [kind, parts.filter((part) => part.kind === kind).flatMap((part) => entriesOfPart(kind, part))]);
  return Object.fromEntries(lists) as Omit<Draft, 'head'>;
}

/** Where the list as a whole was refused, its sound entries are still taken, so that the others do not hide their faults. */
function entriesOfPart(kind: ListKind, part: Part): Entry<unknown>[] {
  if (!Array.isArray(part.raw)) return [];
  const whole = part.whole as unknown[] | null;
  if (kind === 'drawings') return part.raw.map((raw: unknown, index) => ({ raw, whole: whole?.[index] ?? null, part, index }));
  const one: z.ZodType = packFileSchemas[kind].element;
  return part.raw.map((raw: unknown, index) => ({ raw, whole: whole ? whole[index] : (one.safeParse(raw).data ?? null), part, index }));
}

function headFindings(parts: Part[], complete: boolean): Finding[] {
  const heads = parts.filter(({ kind }) => kind === 'pack');
  const at = (part: Part, rule: string, message: string): Finding => {
    return { level: 'error', rule, file: part.file, ...part.places.placeOfKey(['pack']), path: 'pack', message };
  };
  if (heads.length === 0 && complete) {
    const message =
      'There is no pack.yaml. It begins with "pack:" and says id, title, version, licence, language, authors, regions and summary.';
    return [{ level: 'error', rule: 'no-head', file: 'pack.yaml', line: 1, column: 1, path: '', message }];
  }
  return heads.flatMap((part, index) => {
    if (index > 0) return [at(part, 'two-heads', `The pack is already described in ${heads[0]?.file}. Delete one of the two.`)];
    return part.file === 'pack.yaml'
      ? []
      : [at(part, 'head-elsewhere', "What the pack is stands in a file called pack.yaml in the pack's own folder. Move it there.")];
  });
}

function overfull(kind: ListKind, entries: Entry<unknown>[]): Finding[] {
  const limit = entryLimits[kind];
  const first = entries[limit];
  if (first === undefined) return [];
  const path = [kind, first.index];
  const message = `A pack may have ${limit} ${kind}, and this one has ${entries.length}. Split it, or take some out.`;
  return [
    { level: 'error', rule: 'too-many-entries', file: first.part.file, ...first.part.places.placeOf(path), path: pathText(path), message },
  ];
}

/** A fault of the whole pack, at its place in its file. */
function located({ level, rule, path, message, first }: PackFault, draft: Draft): Finding {
  const { part, inFile } = inItsFile(path, draft);
  const place = part.places.placeOf(inFile);
  if (!first) return { level, rule, file: part.file, ...place, path: pathText(inFile), message };
  const other = inItsFile(first, draft);
  const where = `${other.part.file === part.file ? '' : `${other.part.file}, `}line ${other.part.places.placeOf(other.inFile).line}`;
  return { level, rule, file: part.file, ...place, path: pathText(inFile), message: `${message} The first is in ${where}.` };
}

function inItsFile(path: PackFault['path'], draft: Draft): { part: Part; inFile: (string | number)[] } {
  const [kind, number, ...rest] = path as [ListKind, number, ...(string | number)[]];
  const { part, index } = draft[kind][number] as Entry<unknown>;
  return { part, inFile: [kind, index, ...rest] };
}

/** Called only when there is no error, so that every entry is whole. */
function packOf(draft: Draft): Pack {
  const wholes = listKinds.map((kind) => [kind, draft[kind].map(({ whole }) => whole)]);
  return { head: draft.head, ...Object.fromEntries(wholes) } as Pack;
}
