import { Composer, isMap, isPair, isScalar, isSeq, type Document, type ParsedNode, type Scalar } from 'yaml';
import type { Path } from '../core/pack-draft.js';
import { scan, type Budget } from './yaml/scan.js';
import { syntaxWords } from './yaml/syntax-words.js';
import { yamlLimits } from './yaml/limits.js';
import { decodeText, type PlaceAt, type Position, type TextFault } from './yaml/text.js';
import { keyOf, offsetOf, toValues, type ValueFault } from './yaml/values.js';

export type { Position };
export type YamlFault = Omit<ValueFault, 'offset'> & Position;

/** What a file of YAML holds. `readable` is false when it could not be parsed whole; then `value` says nothing. */
export interface YamlFile {
  readable: boolean;
  value: unknown;
  faults: YamlFault[];
  /** Whether enough has been said about a path, or a place above it. */
  isMuted: (path: Path) => boolean;
  /** The place of a value; where there is none, of the nearest mapping or list above it. */
  placeOf: (path: Path) => Position;
  /** The place of the key that the path ends in. */
  placeOfKey: (path: Path) => Position;
  /** A value as it is written in the file, before it was taken for a number or a word; null for lists and mappings. */
  written: (path: Path) => string | null;
}

/**
 * Reads one file of YAML 1.2 (core schema) from its bytes. Never throws, whatever the bytes: they are checked as text, scanned
 * for depth and size, and only then parsed. No anchors, aliases, tags, merge keys, directives or second documents.
 */
export function readYaml(bytes: Uint8Array, budget: Budget = { pieces: yamlLimits.piecesTogether }): YamlFile {
  const { text, placeAt, faults: textFaults } = decodeText(bytes);
  if (text === null) return unreadable(textFaults, placeAt);
  const { tokens, faults: scanFaults } = scan(text, budget);
  const before = [...textFaults, ...scanFaults];
  if (tokens === null) return unreadable(before, placeAt);
  const [document] = [...new Composer(options).compose(tokens, true, text.length)];
  if (document === undefined) return unreadable(before, placeAt);
  if (document.errors.length > 0) return unreadable([...before, ...syntaxFaults(document)], placeAt);
  const { value, faults, muted } = toValues(document.contents, placeAt);
  const asValueFault = (fault: TextFault): ValueFault => ({ ...fault, level: 'error', path: [] });
  return {
    readable: true,
    value,
    faults: placed([...before.map(asValueFault), ...faults], placeAt),
    isMuted: (path) => path.some((_, index) => muted.has(JSON.stringify(path.slice(0, index + 1)))),
    ...lookUp(document.contents, placeAt),
  };
}

/** Uniqueness of keys is checked by ourselves: the package's check takes minutes on a large mapping. */
const options = {
  version: '1.2',
  schema: 'core',
  strict: true,
  stringKeys: true,
  uniqueKeys: false,
  merge: false,
  resolveKnownTags: false,
  prettyErrors: false,
  logLevel: 'silent',
} as const;

function unreadable(faults: TextFault[], placeAt: PlaceAt): YamlFile {
  const start = { line: 1, column: 1 };
  const found = placed(
    faults.map((fault) => ({ ...fault, level: 'error', path: [] })),
    placeAt,
  );
  return {
    readable: false,
    value: null,
    faults: found,
    isMuted: () => false,
    placeOf: () => start,
    placeOfKey: () => start,
    written: () => null,
  };
}

function placed(faults: ValueFault[], placeAt: PlaceAt): YamlFault[] {
  return faults.map(({ offset, ...fault }) => ({ ...fault, ...placeAt(offset) }));
}

/** The package often tells one slip twice at the same place; only the first is passed on. */
function syntaxFaults(document: Document.Parsed): TextFault[] {
  const byOffset = new Map<number, TextFault>();
  for (const { code, message, pos } of document.errors) {
    if (byOffset.size >= yamlLimits.faults) break;
    const fault = { rule: 'yaml-syntax', offset: pos[0], message: syntaxWords(code, message) };
    if (!byOffset.has(pos[0])) byOffset.set(pos[0], fault);
  }
  return [...byOffset.values()];
}

function lookUp(root: ParsedNode | null, placeAt: PlaceAt): Pick<YamlFile, 'placeOf' | 'placeOfKey' | 'written'> {
  /** The nodes along a path, as far as it exists: each step's key (in a mapping) and value. */
  function walk(path: Path): { key: unknown; value: unknown; whole: boolean } {
    let key: unknown = null;
    let value: unknown = root;
    for (const step of path) {
      const next = stepInto(value, step);
      if (next === null) return { key, value, whole: false };
      key = next.key ?? key;
      value = next.value;
    }
    return { key, value, whole: true };
  }
  return {
    placeOf(path) {
      const { key, value } = walk(path);
      return placeAt(isEmpty(value) && key !== null ? offsetOf(key) : offsetOf(value));
    },
    placeOfKey(path) {
      const { key, value, whole } = walk(path);
      return placeAt(offsetOf(whole && key !== null ? key : value));
    },
    written(path) {
      const { value, whole } = walk(path);
      return whole && isScalar(value) ? sourceOf(value) : null;
    },
  };
}

function stepInto(node: unknown, step: string | number): { key: unknown; value: unknown } | null {
  if (isSeq(node) && typeof step === 'number') {
    const value = node.items[step];
    return value === undefined ? null : { key: null, value };
  }
  if (!isMap(node)) return null;
  const pair = node.items.find((item) => isPair(item) && keyOf(item) === String(step));
  return pair === undefined ? null : { key: pair.key, value: pair.value };
}

/** A key with nothing after the colon. */
function isEmpty(node: unknown): boolean {
  return node === null || (isScalar(node) && node.value === null && (node.source ?? '') === '');
}

function sourceOf(scalar: Scalar): string {
  return scalar.source ?? String(scalar.value);
}
