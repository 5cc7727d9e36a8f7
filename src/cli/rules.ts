import { nearest } from '../core/nearest.js';
import { lintRules } from '../core/lint/index.js';
import type { CommandIo } from './command.js';

/** `rungwise rules [<rule>] [--json]`: the item-writing rules of the check, each with what is wrong with the flaw and where the rule comes from. */
export function run(args: readonly string[], io: CommandIo): Promise<number> {
  const json = args.includes('--json');
  const [name, ...more] = args.filter((arg) => arg !== '--json');
  const found = lintRules.filter((rule) => name === undefined || rule.name === name);
  if (found.length === 0 || more.length > 0) {
    io.err(more.length > 0 ? 'Name one rule, or none for all.\nUse: rungwise rules [<rule>] [--json]' : unknownRule(name ?? ''));
    if (json) io.out(JSON.stringify({ rules: [] }));
    return Promise.resolve(2);
  }
  const rules = found
    .map(({ name: rule, severity, why, source }) => ({ rule, severity, why, source }))
    .sort((a, b) => a.rule.localeCompare(b.rule, 'en'));
  io.out(json ? JSON.stringify({ rules }) : [...rules.map(asText), excusing].join('\n\n'));
  return Promise.resolve(0);
}

function unknownRule(name: string): string {
  const near = nearest(
    name,
    lintRules.map((rule) => rule.name),
  );
  return `There is no rule ${JSON.stringify(name.slice(0, 60))}.${near ? ` Did you mean "${near}"?` : ' Leave the name out to see them all.'}`;
}

const asText = ({ rule, severity, why, source }: { rule: string; severity: string; why: string; source: string }): string =>
  `${rule} (${severity})\n  ${why}\n  From: ${source}.`;

const excusing = [
  'One occurrence of a warning is excused beside it, in the question, family, objective or source, with a reason:',
  '    excuses:',
  '      - rule: long-stem',
  '        reason: The story needs all three readings of the meter.',
].join('\n');
