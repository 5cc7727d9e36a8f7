import type { z } from 'zod';
import { nearest } from '../../core/nearest.js';
import { packFileSchemas, type PackFileKind } from '../../core/pack.js';
import type { Path } from '../../core/pack-draft.js';
import { keySchema } from '../../core/syllabus.js';
import { readYaml, type Position, type YamlFile } from '../read-yaml.js';
import type { Budget } from '../yaml/scan.js';
import { yamlLimits } from '../yaml/limits.js';
import { pathText, plain, quoted, type Finding } from './finding.js';
import type { FolderFile } from './folder.js';
import { readSvg } from '../drawings/read-svg.js';
import { heldBack } from './hidden.js';
import { shapeFaults, valueAt } from './issues.js';

/** What stands under one top-level key of one file. */
export interface Part {
  kind: PackFileKind | 'drawings';
  file: string;
  places: Pick<YamlFile, 'placeOf' | 'placeOfKey'>;
  raw: unknown;
  /** What the schema made of the value; null when it was refused. */
  whole: unknown;
}

export interface FileReading {
  parts: Part[];
  findings: Finding[];
  /** False when something in the file could not be read, so that other files may seem to name things that are not there. */
  complete: boolean;
}

/** One file of a pack. */
export function readFile(file: FolderFile, budget: Budget): FileReading {
  return /\.svg$/i.test(file.name) ? readDrawing(file) : readYamlFile(file, budget);
}

/** A drawing is called as its file is, without folder and ending. */
function readDrawing({ name, bytes }: FolderFile): FileReading {
  const file = plain(name);
  const id = name.replace(/^.*\//, '').replace(/\.svg$/i, '');
  const start = { line: 1, column: 1 };
  const { drawing, faults } = readSvg(id, bytes);
  const findings = faults.map((fault): Finding => ({ ...fault, level: 'error', file, path: '' }));
  if (!keySchema.safeParse(id).success) {
    const message = `A drawing's file is called with small letters, digits and hyphens, such as plug-inside.svg. Rename ${quoted(name)}.`;
    findings.push({ level: 'error', rule: 'drawing-name', file, ...start, path: '', message });
  }
  const places = { placeOf: () => start, placeOfKey: () => start };
  // Named even when it is refused, so that the questions about it are not said to lack it.
  return { parts: [{ kind: 'drawings', file, places, raw: [drawing ?? { id }], whole: [drawing] }], findings, complete: true };
}

/** A file of YAML: its one top-level key, and the shape of what stands under it. */
function readYamlFile({ name, bytes }: FolderFile, budget: Budget): FileReading {
  const file = plain(name);
  const yaml = readYaml(bytes, budget);
  const findings = yaml.faults.map(({ path, ...fault }): Finding => ({ ...fault, file, path: pathText(path) }));
  if (!yaml.readable) return { parts: [], findings, complete: false };
  const say: Say = (rule, path, place, message) => findings.push({ level: 'error', rule, file, ...place, path: pathText(path), message });
  if (yaml.value === null || typeof yaml.value !== 'object' || Array.isArray(yaml.value)) {
    const message = `A file begins with one of these keys at the left margin: ${kinds.join(', ')}, each followed by a colon.`;
    say('no-kind', [], yaml.placeOf([]), yaml.value === null ? `The file is empty. ${message}` : message);
    return { parts: [], findings, complete: false };
  }
  const keys = Object.keys(yaml.value);
  const known = keys.filter((key): key is PackFileKind => Object.hasOwn(packFileSchemas, key));
  for (const key of keys) if (!known.includes(key as PackFileKind)) say('unknown-kind', [key], yaml.placeOfKey([key]), unknownKind(key));
  for (const key of known.slice(1)) {
    say(
      'several-kinds',
      [key],
      yaml.placeOfKey([key]),
      `This file already holds "${known[0]}". Put what stands under "${key}" into a file of its own.`,
    );
  }
  const parts = known.map((kind) => readPart(kind, valueAt(yaml.value, [kind]), file, yaml, say));
  return { parts, findings, complete: known.length === keys.length && keys.length > 0 };
}

type Say = (rule: string, path: Path, place: Position, message: string) => void;

const kinds = Object.keys(packFileSchemas);

function unknownKind(key: string): string {
  const near = nearest(key, kinds);
  return `${quoted(key)} is nothing that a pack holds. ${near ? `Did you mean "${near}"? ` : ''}The key at the left margin is one of ${kinds.join(', ')}.`;
}

function readPart(kind: PackFileKind, raw: unknown, file: string, yaml: YamlFile, say: Say): Part {
  const schema: z.ZodType = packFileSchemas[kind];
  const result = schema.safeParse(raw);
  if (result.success) return { kind, file, places: yaml, raw, whole: result.data };
  const issues = [...result.error.issues, ...(kind === 'questions' ? heldBack(raw, result.error.issues) : [])];
  for (const { rule, path, place, message } of shapeFaults(schema, issues.slice(0, yamlLimits.shapeFaults), raw, kind, yaml))
    say(rule, path, place, message);
  return { kind, file, places: yaml, raw, whole: null };
}
