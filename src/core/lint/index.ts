import type { PackDraft, PackFault } from '../pack-draft.js';
import { cueRules } from './cues.js';
import { packView, type LintFinding, type PackRule, type Rule } from './item.js';
import { keyRules } from './key-places.js';
import { numberRules } from './number-options.js';
import { optionRules } from './options.js';
import { packRules } from './pack-wide.js';
import { stemRules } from './stems.js';

/** Item-writing rules that a program can see. A warning is a question to the author, never a verdict. */

const itemRules: readonly Rule[] = [...stemRules, ...optionRules, ...numberRules, ...cueRules];

/** Every rule of the lint by its name, for explaining. */
export const lintRules: readonly (Rule | PackRule)[] = [...itemRules, ...keyRules, ...packRules];

export function lint(draft: PackDraft, complete: boolean): PackFault[] {
  const pack = packView(draft);
  const fault = ({ name, severity }: Rule | PackRule, finding: LintFinding): PackFault => ({ ...finding, level: severity, rule: name });
  const perItem = pack.items.flatMap((item) => itemRules.flatMap((rule) => rule.find(item, pack).map((finding) => fault(rule, finding))));
  const together = complete ? [...keyRules, ...packRules].flatMap((rule) => rule.findAll(pack).map((finding) => fault(rule, finding))) : [];
  return [...perItem, ...together];
}
