import { nearest } from './nearest.js';
import { idKeys, listKinds, oneOf, textAt, textsAt, type ListKind, type PackDraft, type PackFault, type Path } from './pack-draft.js';

/** No two entries of a list may have one id, in whatever files they stand. */
export function checkIds(draft: PackDraft): PackFault[] {
  return listKinds.flatMap((kind) => {
    const seen = new Map<string, Path>();
    return draft[kind].flatMap(({ raw }, index): PackFault[] => {
      const id = textAt(raw, idKeys[kind]);
      const path: Path = [kind, index, idKeys[kind]];
      const first = seen.get(id);
      if (id !== '' && first === undefined) seen.set(id, path);
      if (id === '' || first === undefined) return [];
      return [
        {
          level: 'error',
          rule: 'duplicate-id',
          path,
          first,
          message: `There are two ${kind} called "${id}". Give one of them another ${idKeys[kind]}.`,
        },
      ];
    });
  });
}

/** Where one entry names another: the list, the way to the name (`*` is every entry), and the list where it must be found. */
const references: readonly (readonly [ListKind, readonly string[], ListKind])[] = [
  ['objectives', ['topic'], 'topics'],
  ['objectives', ['facts', '*', 'source'], 'sources'],
  ['objectives', ['caution'], 'cautions'],
  ['questions', ['objective'], 'objectives'],
  ['questions', ['sources', '*'], 'sources'],
  ['questions', ['caution'], 'cautions'],
  ['questions', ['drawing'], 'drawings'],
  ['families', ['objectives', '*'], 'objectives'],
  ['families', ['sources', '*'], 'sources'],
  ['families', ['caution'], 'cautions'],
  ['families', ['constants', '*', 'source'], 'sources'],
  ['families', ['regions', '*', 'override', 'caution'], 'cautions'],
  ['families', ['regions', '*', 'override', 'constants', '*', 'source'], 'sources'],
  ['skills', ['objectives', '*'], 'objectives'],
  ['skills', ['sources', '*'], 'sources'],
  ['skills', ['caution'], 'cautions'],
];

/** What an entry names must be there. */
export function checkReferences(draft: PackDraft): PackFault[] {
  const known = new Map(listKinds.map((kind) => [kind, new Set(draft[kind].map(({ raw }) => textAt(raw, idKeys[kind])))]));
  return references.flatMap(([from, way, to]) =>
    draft[from].flatMap(({ raw }, index) =>
      textsAt(raw, way)
        .filter(({ text }) => !known.get(to)?.has(text))
        .map(({ path, text }): PackFault => missing([from, index, ...path], text, to, known.get(to) ?? new Set())),
    ),
  );
}

function missing(path: Path, id: string, to: ListKind, known: ReadonlySet<string>): PackFault {
  const near = known.size <= 1_000 ? nearest(id, known) : null;
  const cure = near
    ? `Did you mean "${near}"?`
    : `Correct it, or add ${to === 'drawings' ? 'it as an SVG file of that name' : `the ${oneOf[to]} to a file that begins with "${to}:"`}.`;
  return { level: 'error', rule: 'missing-reference', path, message: `This pack has no ${oneOf[to]} "${id.slice(0, 80)}". ${cure}` };
}

/** A code carries the code of what it belongs to: LA-02-001 asks about LA-02, which is in topic LA. */
export function checkPrefixes(draft: PackDraft): PackFault[] {
  return [
    ...draft.objectives.flatMap(({ raw }, index) =>
      checkPrefix(['objectives', index, 'code'], textAt(raw, 'code'), textAt(raw, 'topic'), 'topic'),
    ),
    ...draft.questions.flatMap(({ raw }, index) =>
      checkPrefix(['questions', index, 'id'], textAt(raw, 'id'), textAt(raw, 'objective'), 'objective'),
    ),
  ];
}

function checkPrefix(path: Path, id: string, owner: string, ownerIs: 'topic' | 'objective'): PackFault[] {
  if (id === '' || owner === '' || id.startsWith(`${owner}-`)) return [];
  const message = `"${id.slice(0, 80)}" must begin with the code of its ${ownerIs}, "${owner.slice(0, 80)}-". Change one of the two.`;
  return [{ level: 'error', rule: 'wrong-prefix', path, message }];
}

/** No candidate's answer, and nothing that people do with their hands, may hang on what nobody has looked up. */
export function checkSources(draft: PackDraft): PackFault[] {
  const fromMemory = new Set(draft.sources.flatMap(({ whole }) => (whole?.basis === 'memory' ? [whole.id] : [])));
  return (['questions', 'families', 'skills'] as const).flatMap((kind) =>
    draft[kind].flatMap(({ raw }, index): PackFault[] => {
      const named = textsAt(raw, ['sources', '*']);
      if (named.length === 0 || !named.every(({ text }) => fromMemory.has(text))) return [];
      const message = `This ${oneOf[kind]} rests on memory alone: every source it names has the basis "memory". Name one that somebody has read, or take it out.`;
      return [{ level: 'error', rule: 'memory-only', path: [kind, index, 'sources'], message }];
    }),
  );
}
