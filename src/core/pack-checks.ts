import { checkFamily } from './families/draw.js';
import type { Family } from './families/schema.js';
import { checkDrawings } from './pack-drawings.js';
import type { Pack } from './pack.js';
import { checkBlueprints } from './pack-blueprints.js';
import { checkSkills } from './pack-skills.js';
import { lint } from './lint/index.js';
import { excused } from './lint/excuses.js';
import { draftOf, textAt, textsAt, type PackDraft, type PackFault, type Path } from './pack-draft.js';
import { checkIds, checkPrefixes, checkReferences, checkSources } from './pack-references.js';
import type { FixedQuestion } from './questions/schema.js';

export interface Coverage {
  objective: string;
  questions: number;
  /** Families that name the objective anywhere in their list. */
  families: number;
}

/** The checks that need more than one entry or more than a shape. With no errors among them the pack may be used. */
export function checkPack(pack: Pack): PackFault[] {
  return checkDraft(draftOf(pack));
}

/** As `checkPack`. With `complete` false some file could not be read, so nothing is said to be missing. With `tryFamilies` false no numbers are drawn. */
export function checkDraft(draft: PackDraft, { complete = true, tryFamilies = true } = {}): PackFault[] {
  const cautions = new Map(draft.objectives.map(({ whole }) => [whole?.code, whole?.caution]));
  const faults = [
    ...checkIds(draft),
    ...(complete ? checkReferences(draft) : []),
    ...checkPrefixes(draft),
    ...checkDrawings(draft, complete),
    ...checkBlueprints(draft, complete),
    ...checkSkills(draft),
    ...checkSources(draft),
    ...draft.questions.flatMap(({ whole }, index) =>
      whole ? checkQuestion(draft, cautions.get(whole.objective), whole, ['questions', index]) : [],
    ),
    ...draft.families.flatMap(({ whole }, index) => (whole && tryFamilies ? checkOneFamily(whole, ['families', index]) : [])),
    ...checkSameSince(draft),
    ...(complete ? checkUnused(draft) : []),
    ...lint(draft, complete),
  ];
  return excused(faults, draft);
}

/** How often each objective is asked, in the pack's order. */
export function coverageOf(draft: PackDraft): Coverage[] {
  const asked = { questions: new Map<string, number>(), families: new Map<string, number>() };
  const count = (map: Map<string, number>, code: string): void => void map.set(code, (map.get(code) ?? 0) + 1);
  for (const { raw } of draft.questions) count(asked.questions, textAt(raw, 'objective'));
  for (const { raw } of draft.families)
    for (const code of new Set(textsAt(raw, ['objectives', '*']).map(({ text }) => text))) count(asked.families, code);
  const codes = new Set(draft.objectives.map(({ raw }) => textAt(raw, 'code')).filter((code) => code !== ''));
  return [...codes].map((objective) => ({
    objective,
    questions: asked.questions.get(objective) ?? 0,
    families: asked.families.get(objective) ?? 0,
  }));
}

function checkQuestion(draft: PackDraft, caution: string | undefined, question: FixedQuestion, path: Path): PackFault[] {
  const faults: PackFault[] = [];
  if (caution !== undefined && question.caution === undefined) {
    const message = `The objective ${question.objective} carries the caution "${caution}", and this question has none. Add "caution: ${caution}", or another that fits.`;
    faults.push({ level: 'warning', rule: 'caution-missing', path: [...path, 'id'], message });
  }
  const outside = (question.regions ?? []).filter((region) => draft.head !== null && !draft.head.regions.includes(region));
  if (outside.length > 0) {
    const message = `The question is for ${outside.join(', ')}, which the pack does not list under regions. Add it in pack.yaml, or leave it out here.`;
    faults.push({ level: 'warning', rule: 'region-not-in-pack', path: [...path, 'regions'], message });
  }
  return faults;
}

/** A slip here decides whether people keep what they remember. */
function checkSameSince(draft: PackDraft): PackFault[] {
  return (['questions', 'families'] as const).flatMap((list) =>
    draft[list].flatMap(({ whole }, index): PackFault[] => {
      if (whole?.sameSince === undefined || whole.sameSince < whole.revision) return [];
      const message = `"sameSince" names an earlier revision that asked the same, and this is revision ${whole.revision}. ${whole.revision === 1 ? 'Take it out.' : `It must be below ${whole.revision}.`}`;
      return [{ level: 'error', rule: 'same-since', path: [list, index, 'sameSince'], message }];
    }),
  );
}

function checkOneFamily(family: Family, path: Path): PackFault[] {
  return checkFamily(family).map((fault) => ({
    level: 'error',
    rule: 'family',
    path: [...path, ...fault.path],
    message: sentence(fault.message),
  }));
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.?!]$/.test(words) ? '' : '.'}`;
}

function checkUnused(draft: PackDraft): PackFault[] {
  const coverage = new Map(coverageOf(draft).map((line) => [line.objective, line.questions + line.families]));
  const used = new Set(draft.objectives.map(({ raw }) => textAt(raw, 'topic')));
  const unasked = draft.objectives.flatMap(({ raw }, index): PackFault[] => {
    const code = textAt(raw, 'code');
    if (code === '' || coverage.get(code) !== 0) return [];
    const message = `Nothing asks about the objective ${code}: write a question or a family for it.`;
    return [{ level: 'warning', rule: 'objective-unasked', path: ['objectives', index, 'code'], message }];
  });
  const empty = draft.topics.flatMap(({ raw }, index): PackFault[] => {
    const code = textAt(raw, 'code');
    if (code === '' || used.has(code)) return [];
    return [
      {
        level: 'warning',
        rule: 'topic-empty',
        path: ['topics', index, 'code'],
        message: `The topic ${code} has no objectives: add one, or take it out.`,
      },
    ];
  });
  return [...unasked, ...empty];
}
