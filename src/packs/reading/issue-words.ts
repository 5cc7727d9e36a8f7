import type { z } from 'zod';
import { nearest } from '../../core/nearest.js';
import type { Path } from '../../core/pack-draft.js';
import { kindNames } from '../../core/questions/schema.js';
import { plain, quoted } from './finding.js';

export interface Words {
  rule: string;
  message: string;
}

/**
 * One issue of a schema in plain words: what is wrong and how to mend it.
 * `input` is the value refused, `written` how it stands in the file (null for lists, mappings and what is not there).
 */
export function issueWords(issue: z.core.$ZodIssue, input: unknown, written: string | null, path: Path): Words {
  switch (issue.code) {
    case 'invalid_type':
      return typeWords(issue.expected, input, written, path);
    case 'invalid_value':
      return valueWords(issue.values, input, written, path);
    case 'too_small':
      return sizeWords('at least', issue.origin, Number(issue.minimum), input, issue.inclusive !== false);
    case 'too_big':
      return sizeWords('at most', issue.origin, Number(issue.maximum), input, issue.inclusive !== false);
    case 'invalid_format':
      return { rule: 'wrong-format', message: `${shown(input, written)} does not fit here. ${expects(issue.message)}` };
    case 'invalid_key':
      return {
        rule: 'wrong-format',
        message: `The name ${quoted(String(path.at(-1)))} cannot stand here. ${expects(issue.issues[0]?.message ?? '')}`,
      };
    case 'custom':
      return { rule: 'not-consistent', message: sentence(issue.message) };
    default:
      if (path.at(-1) === 'kind') return valueWords(questionKinds, input, written, path);
      return { rule: 'wrong-value', message: `${shown(input, written)} is not allowed here.` };
  }
}

const questionKinds = Object.keys(kindNames).filter((kind) => kind !== 'numeric');

const kinds = new Map([
  ['string', 'text'],
  ['number', 'a number'],
  ['int', 'a whole number'],
  ['boolean', 'true or false'],
  ['array', 'a list (each entry begins with "- " on a line of its own)'],
  ['object', 'a mapping (lines of the form "key: value", indented)'],
  ['record', 'a mapping (lines of the form "name: value", indented)'],
]);

function typeWords(expected: string, input: unknown, written: string | null, path: Path): Words {
  const needed = expected
    .split(' or ')
    .map((kind) => kinds.get(kind) ?? kind)
    .join(', or ');
  if (input === undefined) return missing(needed, path);
  if (input === null && (written ?? '') === '') return { rule: 'wrong-type', message: `Nothing is written here; ${needed} is needed.` };
  if (expected === 'string' && typeof input === 'object' && input !== null) {
    const is = Array.isArray(input) ? 'a list' : 'a mapping';
    return {
      rule: 'wrong-type',
      message: `Text is needed here, and this is read as ${is}. If it is a text that begins with {, [ or a hyphen, put it in quote marks.`,
    };
  }
  if (expected === 'string') {
    const message = `Text is needed here, and ${shown(input, written)} is read as ${kindOf(input)}. Put it in quote marks: '${plain(written ?? '')}'.`;
    return { rule: 'wrong-type', message };
  }
  const quotedNumber = typeof input === 'string' && /^\s*-?\d/.test(input) && needed.includes('number');
  const cure = quotedNumber ? ' Write it without quote marks, spaces or unit, with a point for decimals.' : '';
  return { rule: 'wrong-type', message: `This must be ${needed}, and ${shown(input, written)} is not.${cure}` };
}

function missing(needed: string, path: Path): Words {
  const key = path.at(-1);
  return { rule: 'missing-key', message: `The key "${String(key)}" is missing here. Add a line "${String(key)}: …" (${needed}).` };
}

function valueWords(values: readonly unknown[], input: unknown, written: string | null, path: Path): Words {
  const allowed = values.map(String);
  if (input === undefined) return missing(allowed.join(' or '), path);
  if (values.length === 1 && values[0] === true) {
    return {
      rule: 'wrong-value',
      message: `Only "true" can stand here, and ${shown(input, written)} does. Where it is not true, leave the whole line out.`,
    };
  }
  const near = typeof input === 'string' ? nearest(input, allowed) : null;
  const cure = near ? ` Did you mean "${near}"?` : '';
  const list = allowed.length === 1 ? `Only ${allowed[0]} is allowed.` : `Allowed: ${allowed.join(', ')}.`;
  return { rule: 'wrong-value', message: `${shown(input, written)} is not one of the values that can stand here.${cure} ${list}` };
}

function sizeWords(bound: 'at least' | 'at most', origin: string, limit: number, input: unknown, inclusive: boolean): Words {
  const rule = bound === 'at least' ? 'too-small' : 'too-big';
  if (origin === 'string') {
    const letters = String(input ?? '').trim().length;
    if (letters === 0)
      return { rule, message: 'The text is empty. Write something between the quote marks, or leave the line out where it is not needed.' };
    return {
      rule,
      message: `The text has ${letters} letters; ${bound} ${limit} are allowed. ${bound === 'at most' ? `Shorten it by ${letters - limit}.` : 'Write more.'}`,
    };
  }
  if (origin === 'array') {
    const entries = Array.isArray(input) ? input.length : 0;
    return {
      rule,
      message: `The list has ${entries} ${entries === 1 ? 'entry' : 'entries'}; ${bound} ${limit} ${bound === 'at most' ? 'are allowed' : 'must be there'}.`,
    };
  }
  return {
    rule,
    message: `The number ${plain(String(input))} is out of range: it must be ${inclusive ? bound : bound === 'at least' ? 'above' : 'below'} ${limit}.`,
  };
}

/** The schemas say what they want in a phrase, such as "two capital letters, such as LA". */
function expects(phrase: string): string {
  return phrase === '' || phrase.startsWith('Invalid') ? 'Compare it with an entry that works.' : `It must be ${phrase}.`;
}

function shown(input: unknown, written: string | null): string {
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object' && input !== null) return 'a mapping';
  return quoted(typeof input === 'string' ? input : (written ?? String(input)));
}

function kindOf(input: unknown): string {
  if (typeof input === 'number') return 'a number';
  return typeof input === 'boolean' ? 'true or false' : 'nothing';
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.?!]$/.test(words) ? '' : '.'}`;
}
