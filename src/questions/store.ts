import type { Skill } from '../core/skill.js';
import type { Blueprint, Caution, Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries about the bank: what a question says, and in which pack, topic and objective it stands. */

export interface BankRow {
  questionId: number;
  code: string;
  kind: string;
  revision: number;
  body: unknown;
  drawing: unknown;
  objectiveCode: string;
  objectiveTitle: string;
  weight: number;
  topicCode: string;
  topicTitle: string;
  packTitle: string;
  packVersion: string;
  packLicence: string;
  cautions: unknown;
  sources: unknown;
}

export async function readRevision(db: Db, questionId: number, revision: number): Promise<BankRow | null> {
  const { rows } = await db.pool.query<BankRow>({
    name: 'question-revision',
    text: `SELECT q.id AS "questionId", q.code, q.kind, r.revision, r.body, d.body AS drawing,
             o.code AS "objectiveCode", o.title AS "objectiveTitle", o.weight, t.code AS "topicCode", t.title AS "topicTitle",
             p.title AS "packTitle", p.version AS "packVersion", p.licence AS "packLicence", p.cautions, p.sources
           FROM question_revision r JOIN question q ON q.id = r.question_id JOIN objective o ON o.id = q.objective_id
             JOIN topic t ON t.id = o.topic_id JOIN pack p ON p.id = q.pack_id
             LEFT JOIN drawing d ON d.id = r.drawing_id
           WHERE r.question_id = $1 AND r.revision = $2`,
    values: [questionId, revision],
  });
  return rows[0] ?? null;
}

export interface BankCounts {
  packs: { title: string; version: string; licence: string; questions: number; families: number }[];
  objectives: number;
  topics: number;
}

export async function countBank(db: Db): Promise<BankCounts> {
  const { rows } = await db.pool.query<{ title: string; version: string; licence: string; questions: number; families: number }>(
    `SELECT p.title, p.version, p.licence, count(*) FILTER (WHERE q.kind <> 'numeric')::int AS questions,
       count(*) FILTER (WHERE q.kind = 'numeric')::int AS families
     FROM pack p LEFT JOIN question q ON q.pack_id = p.id AND NOT q.retired GROUP BY p.id ORDER BY p.title`,
  );
  return { packs: rows, objectives: await db.prisma.objective.count(), topics: await db.prisma.topic.count() };
}

/** A family of the bank as lists name it. */
export interface FamilyEntry {
  questionId: number;
  code: string;
  revision: number;
  title: string;
  objective: string;
  objectiveTitle: string;
  regions: string[];
  /** The calculation that answers it; null when there is none. */
  calculator: string | null;
}

export async function listFamilies(db: Db): Promise<FamilyEntry[]> {
  const { rows } = await db.pool.query<FamilyEntry>(
    `SELECT q.id AS "questionId", q.code, q.current_revision AS revision, r.body->>'title' AS title, o.code AS objective,
       o.title AS "objectiveTitle", q.regions, r.body->'calculator'->>'id' AS calculator
     FROM question q JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision
       JOIN objective o ON o.id = q.objective_id
     WHERE q.kind = 'numeric' AND NOT q.retired ORDER BY o.code, q.code`,
  );
  return rows;
}

/** A question that may be asked, as whoever plans needs it. */
export interface CatalogueRow {
  questionId: number;
  kind: string;
  revision: number;
  regions: Region[];
  objective: string;
  objectiveTitle: string;
  weight: number;
  topic: string;
  topicTitle: string;
  /** Title and slug of its pack. */
  pack: string;
  slug: string;
}

/** All that are not retired, in the order of the syllabus, pack by pack. */
export async function listCatalogue(db: Db): Promise<CatalogueRow[]> {
  const { rows } = await db.pool.query<CatalogueRow>(
    `SELECT q.id AS "questionId", q.kind, q.current_revision AS revision, q.regions, o.code AS objective, o.title AS "objectiveTitle",
       o.weight, t.code AS topic, t.title AS "topicTitle", p.title AS pack, p.slug
     FROM question q JOIN objective o ON o.id = q.objective_id JOIN topic t ON t.id = o.topic_id JOIN pack p ON p.id = q.pack_id
     WHERE NOT q.retired ORDER BY p.id, t.position, q.id`,
  );
  return rows;
}

/** The make-up of a paper and the pack whose questions fill it. */
export interface PaperRow {
  pack: string;
  packTitle: string;
  blueprint: Blueprint;
}

/** Every make-up of papers, those of the pack first and with more questions later; those that tutors wrote are called own-1, own-2, ... */
export async function listPapers(db: Db): Promise<PaperRow[]> {
  const { rows } = await db.pool.query<PaperRow>(
    `SELECT pack, "packTitle", blueprint FROM (
       SELECT p.id, p.slug AS pack, p.title AS "packTitle", b AS blueprint, 0 AS own FROM pack p, jsonb_array_elements(p.blueprints) b
       UNION ALL
       SELECT p.id, p.slug, p.title, o.body || jsonb_build_object('id', 'own-' || o.id), o.id
       FROM own_blueprint o JOIN pack p ON p.id = o.pack_id WHERE NOT o.retired
     ) papers ORDER BY id, own, (blueprint->>'questions')::int, blueprint->>'id'`,
  );
  return rows;
}

/** A practical skill, with what stands beside it in its pack. */
export interface SkillRow {
  /** Slug of its pack. */
  pack: string;
  packTitle: string;
  skill: Skill;
  caution: Caution;
  objectives: { code: string; title: string }[];
  /** Short names of the sources it rests on. */
  sources: string;
}

/** The practical skills of all packs, as each pack orders them. */
export async function listSkills(db: Db): Promise<SkillRow[]> {
  const { rows } = await db.pool.query<SkillRow>(
    `SELECT p.slug AS pack, p.title AS "packTitle", s AS skill,
       (SELECT c FROM jsonb_array_elements(p.cautions) c WHERE c->>'id' = s->>'caution') AS caution,
       (SELECT coalesce(jsonb_agg(jsonb_build_object('code', o.code, 'title', o.title) ORDER BY w.at), '[]')
        FROM jsonb_array_elements_text(s->'objectives') WITH ORDINALITY w(code, at)
          JOIN topic t ON t.pack_id = p.id JOIN objective o ON o.topic_id = t.id AND o.code = w.code) AS objectives,
       (SELECT coalesce(string_agg(c->>'short', '; ' ORDER BY w.at), '')
        FROM jsonb_array_elements_text(s->'sources') WITH ORDINALITY w(id, at) JOIN jsonb_array_elements(p.sources) c ON c->>'id' = w.id) AS sources
     FROM pack p, jsonb_array_elements(p.skills) WITH ORDINALITY AS k(s, at) ORDER BY p.id, k.at`,
  );
  return rows;
}
