import type { z } from 'zod';
import { nearest } from '../../core/nearest.js';
import type { Path } from '../../core/pack-draft.js';
import type { Position, YamlFile } from '../read-yaml.js';
import { quoted } from './finding.js';
import { issueWords, type Words } from './issue-words.js';
import { keysAllowed } from './schema-keys.js';

type Issue = z.core.$ZodIssue;

/** A fault of shape, in the file's own place. */
export interface ShapeFault extends Words {
  path: Path;
  place: Position;
}

/** What is wrong with the value under `key` of a file, in plain words and with its place; empty when the schema takes it. */
export function shapeFaults(schema: z.core.$ZodType, issues: readonly Issue[], value: unknown, key: string, yaml: YamlFile): ShapeFault[] {
  return issues
    .flatMap((issue) => flattened(issue, []))
    .flatMap((issue): ShapeFault[] => {
      const inner = issue.path as (string | number)[];
      const path = [key, ...inner];
      if (yaml.isMuted(path)) return [];
      if (issue.code === 'unrecognized_keys') return unknownKeys(issue.keys, keysAllowed(schema, inner), path, yaml);
      const input = valueAt(value, inner);
      const isMissing = input === undefined && issue.code !== 'invalid_key';
      const place = issue.code === 'invalid_key' ? yaml.placeOfKey(path) : yaml.placeOf(isMissing ? path.slice(0, -1) : path);
      return [{ ...issueWords(issue, input, yaml.written(path), path), path, place }];
    });
}

function unknownKeys(keys: readonly string[], allowed: string[], path: Path, yaml: YamlFile): ShapeFault[] {
  return keys.map((key): ShapeFault => {
    const ofAnotherKind = allowed.includes(key);
    const near = ofAnotherKind ? null : nearest(key, allowed);
    const comma = 'If a comma before it belongs to a text, put the whole text in quote marks.';
    const cure = ofAnotherKind
      ? 'It belongs to another kind: delete it, or correct "kind".'
      : near
        ? `Did you mean "${near}"?`
        : key.includes(' ')
          ? comma
          : 'Delete it, or correct it.';
    const list = allowed.length > 0 ? ` Keys allowed here: ${allowed.filter((each) => each !== key).join(', ')}.` : '';
    const inside = [...path, key];
    return {
      rule: 'unknown-key',
      message: `There is no key ${quoted(key)} here. ${cure}${list}`,
      path: inside,
      place: yaml.placeOfKey(inside),
    };
  });
}

/** A union's issue as the issues of the member that was most likely meant. */
function flattened(issue: Issue, above: PropertyKey[]): Issue[] {
  const path = [...above, ...issue.path];
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [{ ...issue, path }];
  const members = issue.errors.filter((errors) => errors.length > 0);
  const alone = members.map((errors) => (errors.length === 1 && errors[0]?.path.length === 0 ? errors[0] : null));
  if (alone.every((error) => error?.code === 'invalid_value')) {
    const values = alone.flatMap((error) => (error?.code === 'invalid_value' ? error.values : []));
    return [{ code: 'invalid_value', values, path, message: '' }];
  }
  if (alone.every((error) => error?.code === 'invalid_type')) {
    const expected = alone.map((error) => (error?.code === 'invalid_type' ? error.expected : '')).join(' or ');
    return [{ code: 'invalid_type', expected: expected as 'string', path, message: '' }];
  }
  const rightKind = members.filter((_, index) => alone[index]?.code !== 'invalid_type');
  const meant = [...rightKind].sort((a, b) => a.length - b.length)[0] ?? [];
  return meant.flatMap((inner) => flattened(inner, path));
}

/** The value at a path through plain data; undefined when there is none. */
export function valueAt(value: unknown, path: Path): unknown {
  let at = value;
  for (const step of path) {
    if (at === null || typeof at !== 'object' || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<string | number, unknown>)[step];
  }
  return at;
}
