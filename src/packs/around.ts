import type { Pool, PoolClient } from 'pg';
import type { Pack } from '../core/pack.js';
import { hashOf } from './hash.js';

/** What of a pack changes round about its questions: what people are warned of, told and shown with them. */
export interface AroundChange {
  label: string;
  codes: string[];
}

type Coded = { code: string; content: unknown };

/** @returns empty when nothing of it changes; drawings and warnings first, since they change what a question asks or tells */
export async function changesAround(sql: PoolClient | Pool, packId: number, pack: Pack): Promise<AroundChange[]> {
  const there = await readAround(sql, packId);
  const lists: [label: string, now: Coded[], before: Coded[]][] = [
    ['Drawings', pack.drawings.map((drawing) => ({ code: drawing.id, content: drawing })), there.drawings],
    ['Cautions', byId(pack.cautions), byId(there.cautions)],
    ['Objectives', pack.objectives.map((content) => ({ code: content.code, content })), there.objectives],
    ['Topics', pack.topics.map(({ code, title, blurb }) => ({ code, content: { title, blurb } })), there.topics],
    ['Sources', byId(pack.sources), byId(there.sources)],
    ['Papers', byId(pack.blueprints), byId(there.blueprints)],
    ['Skills', byId(pack.skills), byId(there.skills)],
  ];
  return lists
    .map(([label, now, before]) => ({ label: `${label} that change`, codes: differing(now, before) }))
    .filter(({ codes }) => codes.length > 0);
}

const byId = (list: readonly { id: string }[]): Coded[] => list.map((content) => ({ code: content.id, content }));

/** Those that are new, gone or otherwise than before. */
function differing(now: readonly Coded[], before: readonly Coded[]): string[] {
  const hashes = new Map(before.map(({ code, content }) => [code, hashOf(content)]));
  const changed = now.filter(({ code, content }) => hashes.get(code) !== hashOf(content)).map(({ code }) => code);
  const codes = new Set(now.map(({ code }) => code));
  return [...changed, ...before.map(({ code }) => code).filter((code) => !codes.has(code))];
}

interface Around {
  cautions: { id: string }[];
  sources: { id: string }[];
  blueprints: { id: string }[];
  skills: { id: string }[];
  objectives: Coded[];
  topics: Coded[];
  drawings: Coded[];
}

async function readAround(sql: PoolClient | Pool, packId: number): Promise<Around> {
  const { rows } = await sql.query<Around>(
    `SELECT p.cautions, p.sources, p.blueprints, p.skills,
       (SELECT coalesce(jsonb_agg(jsonb_build_object('code', o.code, 'content', o.body)), '[]') FROM objective o JOIN topic t ON t.id = o.topic_id
        WHERE t.pack_id = p.id) AS objectives,
       (SELECT coalesce(jsonb_agg(jsonb_build_object('code', t.code, 'content', jsonb_build_object('title', t.title, 'blurb', t.blurb))), '[]')
        FROM topic t WHERE t.pack_id = p.id) AS topics,
       (SELECT coalesce(jsonb_agg(jsonb_build_object('code', d.code, 'content', d.body)), '[]') FROM drawing d
        WHERE d.id IN (SELECT r.drawing_id FROM question q JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision
                       WHERE q.pack_id = p.id AND NOT q.retired)) AS drawings
     FROM pack p WHERE p.id = $1`,
    [packId],
  );
  return rows[0] as Around;
}
