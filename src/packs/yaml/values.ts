import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar, type YAMLMap } from 'yaml';
import { plain, quoted } from '../reading/finding.js';
import type { Path } from '../../core/pack-draft.js';
import { yamlLimits } from './limits.js';
import { findRefused, type Places, type TextFault } from './text.js';

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
export function toValues(root: Node | null, places: Places): Values {
  const faults: ValueFault[] = [];
  const muted = new Set<string>();

  function say(rule: string, offset: number, path: Path, message: string): void {
    if (faults.length < 10 * yamlLimits.faults) faults.push({ level: 'error', rule, offset, path, message });
  }

  function read(node: unknown, path: Path): unknown {
    if (isMap(node)) return readMap(node, path);
    if (isSeq(node)) {
      if (node.items.length > yamlLimits.entriesPerList) {
        say(
          'yaml-size',
          offsetOf(node),
          path,
          `A list may have ${yamlLimits.entriesPerList} entries; this one has ${node.items.length}. Split it.`,
        );
      }
      return node.items.slice(0, yamlLimits.entriesPerList).map((item, index) => read(item, [...path, index]));
    }
    if (isScalar(node)) return readScalar(node, path);
    if (isAlias(node)) muted.add(JSON.stringify(path));
    return null;
  }

  function readMap(map: YAMLMap, path: Path): Record<string, unknown> {
    const out: Record<string, unknown> = {};
    const seen = new Map<string, number>();
    if (map.items.length > yamlLimits.keysPerMapping) {
      say(
        'yaml-size',
        offsetOf(map),
        path,
        `A mapping may have ${yamlLimits.keysPerMapping} keys; this one has ${map.items.length}. Did you forget a "- "?`,
      );
    }
    for (const pair of map.items.slice(0, yamlLimits.keysPerMapping)) {
      const key = keyOf(pair);
      const offset = offsetOf(pair.key);
      const fault = keyFault(key, seen.get(key), places);
      if (fault) {
        say(fault.rule, offset, [...path, key], fault.message);
        continue;
      }
      seen.set(key, offset);
      out[key] = read(pair.value, [...path, key]);
    }
    return out;
  }

  function readScalar(scalar: Scalar, path: Path): unknown {
    const { value } = scalar;
    if (typeof value !== 'string') return value;
    const hidden = findRefused(value.replaceAll('\r', ''))[0];
    if (value.length > yamlLimits.lettersPerText) {
      muted.add(JSON.stringify(path));
      say(
        'yaml-size',
        offsetOf(scalar),
        path,
        `A text may have ${yamlLimits.lettersPerText} letters; this one has ${value.length}. Shorten it.`,
      );
    } else if (hidden) {
      muted.add(JSON.stringify(path));
      say('text-character', offsetOf(scalar), path, `In this text: ${hidden.message}`);
    } else if (scalar.type === 'PLAIN' && /^\S/.test(scalar.comment ?? '')) {
      const lost = `#${scalar.comment}`;
      const message = `The text ends at ${quoted(value)}, because what follows a # is left out: ${quoted(lost)}. Put the whole text in quote marks.`;
      faults.push({ level: 'warning', rule: 'text-cut-short', offset: offsetOf(scalar), path, message });
    }
    return value;
  }

  const value = read(root, []);
  return { value, faults, muted };
}

/** Keys that reach behind the data in JavaScript; Object.prototype stays out of reach whatever a file says. */
const forbidden = new Set(['__proto__', 'constructor', 'prototype']);

function keyFault(key: string, first: number | undefined, places: Places): { rule: string; message: string } | null {
  if (key === '<<')
    return {
      rule: 'yaml-merge-key',
      message: 'The key << would copy a mapping from elsewhere, which packs do not allow. Write the keys out.',
    };
  if (forbidden.has(key))
    return { rule: 'forbidden-key', message: `The key ${quoted(key)} is not allowed anywhere in a pack. Delete the line.` };
  if (first === undefined) return null;
  const message = `The key ${quoted(key)} is written twice in one place, first in line ${places.at(first).line}. Delete one, or begin a new entry with "- ".`;
  return { rule: 'duplicate-key', message };
}

export function keyOf(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value ?? '') : plain(String(pair.key));
}

export function offsetOf(node: unknown): number {
  return (isScalar(node) || isMap(node) || isSeq(node) || isAlias(node)) && node.range ? node.range[0] : 0;
}
