import type { Drawing } from '../core/drawing.js';
import { familySchema, type Family } from '../core/families/schema.js';
import { compileFamily, type CompiledFamily } from '../core/families/draw.js';
import { fixedQuestionSchema, type FixedQuestion } from '../core/questions/schema.js';
import { cautionSchema, sourceSchema, type Caution, type Region, type Source } from '../core/syllabus.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { countBank, listCatalogue, listFamilies, listPapers, listSkills, readRevision, type BankRow } from './store.js';

/** A question as pages and marking need it. */
export interface BankQuestion {
  questionId: number;
  code: string;
  revision: number;
  item:
    | { kind: 'fixed'; question: FixedQuestion; drawing: Drawing | null }
    | { kind: 'numeric'; family: Family; compiled: (region: Region) => CompiledFamily | null };
  objective: { code: string; title: string; weight: number };
  topic: { code: string; title: string };
  pack: { title: string; version: string; licence: string };
  /** The caution with this key, from the question's own pack. */
  caution: (key: string | undefined) => Caution | null;
  /** Short names of the sources it rests on. */
  sources: string;
  /** The same sources in full. */
  cites: readonly Source[];
  checked: string;
}

/** Revisions never change, but their pack's head can, on another server too: so what is kept is read again now and then. */
const keepMilliseconds = 60_000;
const keepMost = 2_000;

export type QuestionsService = ReturnType<typeof questionsService>;

export function questionsService({ db, clock }: { db: Db; clock: Clock }) {
  /** Promises, so that many who ask for one question at once wait for one reading of it. */
  const kept = new Map<string, { until: number; question: Promise<BankQuestion | null> }>();

  async function get(questionId: number, revision: number): Promise<BankQuestion | null> {
    const key = `${questionId}/${revision}`;
    const now = clock.now().getTime();
    const found = kept.get(key);
    if (found !== undefined && now < found.until && now > found.until - 2 * keepMilliseconds) return await found.question;
    const question = readRevision(db, questionId, revision).then((row) => (row === null ? null : fromRow(row)));
    if (kept.size >= keepMost) kept.clear();
    kept.set(key, { until: now + keepMilliseconds, question });
    // What could not be read, or is not there, is asked for again next time.
    const forgetKey = (): void => void (kept.get(key)?.question === question && kept.delete(key));
    question.then((found) => found === null && forgetKey(), forgetKey);
    return await question;
  }

  /** What a list holds is kept as long as a question is. */
  function keeping<T>(read: () => Promise<T>): { get(): Promise<T>; forget(): void } {
    let held: { until: number; value: T } | null = null;
    const get = async (): Promise<T> => {
      const now = clock.now().getTime();
      if (held === null || now >= held.until || now < held.until - 2 * keepMilliseconds)
        held = { until: now + keepMilliseconds, value: await read() };
      return held.value;
    };
    return { get, forget: () => void (held = null) };
  }

  const lists = {
    families: keeping(() => listFamilies(db)),
    catalogue: keeping(() => listCatalogue(db)),
    papers: keeping(() => listPapers(db)),
    skills: keeping(() => listSkills(db)),
  };

  /** After a pack was loaded here: nothing is answered from memory that may have changed. */
  function forget(): void {
    kept.clear();
    for (const list of Object.values(lists)) list.forget();
  }

  return {
    get,
    families: lists.families.get,
    catalogue: lists.catalogue.get,
    papers: lists.papers.get,
    skills: lists.skills.get,
    forget,
    count: () => countBank(db),
  };
}

function fromRow(row: BankRow): BankQuestion {
  const cautions = new Map(
    cautionSchema
      .array()
      .parse(row.cautions)
      .map((caution) => [caution.id, caution]),
  );
  const sources = new Map(
    sourceSchema
      .array()
      .parse(row.sources)
      .map((source) => [source.id, source]),
  );
  const body =
    row.kind === 'numeric'
      ? numericItem(familySchema.parse(row.body))
      : // Only the reader of packs writes drawings, and it has built them anew from what it knows.
        fixedItem(fixedQuestionSchema.parse(row.body), row.drawing as Drawing | null);
  return {
    questionId: row.questionId,
    code: row.code,
    revision: row.revision,
    item: body.item,
    objective: { code: row.objectiveCode, title: row.objectiveTitle, weight: row.weight },
    topic: { code: row.topicCode, title: row.topicTitle },
    pack: { title: row.packTitle, version: row.packVersion, licence: row.packLicence },
    caution: (key) => (key === undefined ? null : (cautions.get(key) ?? null)),
    sources: body.sources.map((id) => sources.get(id)?.short ?? id).join('; '),
    cites: body.sources.flatMap((id) => sources.get(id) ?? []),
    checked: body.checked,
  };
}

const fixedItem = (question: FixedQuestion, drawing: Drawing | null) => ({
  item: { kind: 'fixed' as const, question, drawing },
  sources: question.sources,
  checked: question.checked,
});

function numericItem(family: Family) {
  const byRegion = new Map<Region, CompiledFamily | null>();
  const compiled = (region: Region): CompiledFamily | null => {
    if (!byRegion.has(region)) byRegion.set(region, compileFamily(family, region));
    return byRegion.get(region) ?? null;
  };
  return { item: { kind: 'numeric' as const, family, compiled }, sources: family.sources, checked: family.checked };
}
