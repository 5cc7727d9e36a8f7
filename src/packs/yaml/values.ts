import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml';
import { plain, quoted } from '../reading/finding.js';
import type { Path } from '../../core/pack-draft.js';
import { yamlLimits } from './limits.js';
import { findRefused, type PlaceAt, type TextFault } from './text.js';

export interface ValueFault extends TextFault {
  level: 'error' | 'warning';
  path: Path;
}

/** The plain data of a parsed file. `muted` are the paths (as JSON) about which enough has been said: no later check speaks of them. */
export interface Values {
  value: unknown;
  faults: ValueFault[];
  muted: ReadonlySet<string>;
}

/** Turns parsed nodes into plain data, saying what YAML allows and a pack does not. Depth is bounded by the scan before. */
export function toValues(root: Node | null, placeAt: PlaceAt): Values {
  const reading: Reading = { faults: [], muted: new Set(), placeAt };
  const value = readNode(reading, root, []);
  return { value, faults: reading.faults, muted: reading.muted };
}

interface Reading {
  faults: ValueFault[];
  muted: Set<string>;
  placeAt: PlaceAt;
}

function readNode(reading: Reading, node: unknown, path: Path): unknown {
  if (isMap(node)) return readMap(reading, node, path);
  if (isSeq(node)) return readList(reading, node, path);
  if (isScalar(node)) return readScalar(reading, node, path);
  if (isAlias(node)) reading.muted.add(JSON.stringify(path));
  return null;
}

function readList(reading: Reading, list: YAMLSeq, path: Path): unknown[] {
  const limit = yamlLimits.entriesPerList;
  if (list.items.length > limit) {
    say(reading, 'yaml-size', list.items[limit], path, `A list may have ${limit} entries; this one has ${list.items.length}. Split it.`);
  }
  return list.items.slice(0, limit).map((item, index) => readNode(reading, item, [...path, index]));
}

function readMap(reading: Reading, map: YAMLMap, path: Path): Record<string, unknown> {
  const limit = yamlLimits.keysPerMapping;
  if (map.items.length > limit) {
    const message = `A mapping may have ${limit} keys; this one has ${map.items.length}. Did you forget the "- " that begins each entry of a list?`;
    say(reading, 'yaml-size', map.items[limit]?.key, path, message);
  }
  const out: Record<string, unknown> = {};
  const seen = new Map<string, unknown>();
  for (const pair of map.items.slice(0, limit)) {
    const key = keyOf(pair);
    const fault = keyFault(key, seen.get(key), reading.placeAt);
    if (fault) {
      say(reading, fault.rule, pair.key, [...path, key], fault.message);
    } else {
      seen.set(key, pair.key);
      out[key] = readNode(reading, pair.value, [...path, key]);
    }
  }
  return out;
}

function readScalar(reading: Reading, scalar: Scalar, path: Path): unknown {
  const { value } = scalar;
  if (typeof value !== 'string') return value;
  const hidden = findRefused(value.replaceAll('\r', ''))[0];
  if (value.length > yamlLimits.lettersPerText) {
    reading.muted.add(JSON.stringify(path));
    say(
      reading,
      'yaml-size',
      scalar,
      path,
      `A text may have ${yamlLimits.lettersPerText} letters; this one has ${value.length}. Shorten it.`,
    );
  } else if (hidden) {
    reading.muted.add(JSON.stringify(path));
    say(reading, 'text-character', scalar, path, `In this text: ${hidden.message}`);
  } else if (scalar.type === 'PLAIN' && /^\S/.test(scalar.comment ?? '')) {
    const lost = quoted(`#${scalar.comment}`);
    const message = `The text ends at ${quoted(value)}, because what follows a # is left out: ${lost}. Put the whole text in quote marks.`;
    say(reading, 'text-cut-short', scalar, path, message, 'warning');
  }
  return value;
}

function say(reading: Reading, rule: string, node: unknown, path: Path, message: string, level: ValueFault['level'] = 'error'): void {
  if (reading.faults.length < 10 * yamlLimits.faults) reading.faults.push({ level, rule, offset: offsetOf(node), path, message });
}

/** Keys that reach behind the data in JavaScript; Object.prototype stays out of reach whatever a file says. */
const forbidden = new Set(['__proto__', 'constructor', 'prototype']);

function keyFault(key: string, first: unknown, placeAt: PlaceAt): { rule: string; message: string } | null {
  if (key === '<<')
    return {
      rule: 'yaml-merge-key',
      message: 'The key << would copy a mapping from elsewhere, which packs do not allow. Write the keys out.',
    };
  if (forbidden.has(key))
    return { rule: 'forbidden-key', message: `The key ${quoted(key)} is not allowed anywhere in a pack. Delete the line.` };
  if (first === undefined) return null;
  const message = `The key ${quoted(key)} is written twice in one place, first in line ${placeAt(offsetOf(first)).line}. Delete one, or begin a new entry with "- ".`;
  return { rule: 'duplicate-key', message };
}

export function keyOf(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value ?? '') : plain(String(pair.key));
}

export function offsetOf(node: unknown): number {
  return (isScalar(node) || isMap(node) || isSeq(node) || isAlias(node)) && node.range ? node.range[0] : 0;
}
