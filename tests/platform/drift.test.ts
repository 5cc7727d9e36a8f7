import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sqlTo } from '../../scripts/schema-engine.mjs';
import { projectFolder } from '../../src/platform/project-folder.js';
import { catalogueOf } from '../support/catalogue.js';
import { emptyDatabase, freshDatabase, type TestDatabase } from '../support/database.js';

/** What stands in the migrations by hand, since the schema cannot say it. Anything else that differs is drift. */
const byHand = [
  'constraints: answer_certainty_check on answer',
  'constraints: answer_expected_recall_check on answer',
  'constraints: answer_rating_check on answer',
  'constraints: answer_score_check on answer',
  'constraints: class_member_extra_time_check on class_member',
  'constraints: evening_answer_choice_check on evening_answer',
  'constraints: evening_item_state_check on evening_item',
  'constraints: evening_region_check on evening',
  'constraints: guess_count_check on guess',
  'constraints: installation_contact_check on installation',
  'constraints: installation_keep_check on installation',
  'constraints: installation_one_check on installation',
  'constraints: job_run_outcome_check on job_run',
  'constraints: memory_difficulty_check on memory',
  'constraints: memory_reps_check on memory',
  'constraints: memory_stability_check on memory',
  'constraints: memory_whole_check on memory',
  'constraints: pack_origin_check on pack',
  'constraints: paper_region_check on paper',
  'constraints: paper_versions_check on paper',
  'constraints: paper_window_check on paper',
  'constraints: person_name_check on person',
  'constraints: person_region_check on person',
  'constraints: person_role_check on person',
  'constraints: query_answer_check on query',
  'constraints: query_answered_check on query',
  'constraints: query_body_check on query',
  'constraints: question_kind_check on question',
  'constraints: removed_person_why_check on removed_person',
  'constraints: sign_off_withdrawn_check on sign_off',
  'constraints: sitting_answer_choice_check on sitting_answer',
  'constraints: sitting_extra_time_check on sitting',
  'constraints: sitting_marked_check on sitting',
  'constraints: sitting_way_check on sitting',
  'constraints: sitting_whose_check on sitting',
  'constraints: staff_change_role_check on staff_change',
  'constraints: study_class_join_check on study_class',
  'constraints: study_class_meeting_check on study_class',
  'constraints: study_class_name_check on study_class',
  'functions: answers_are_kept',
  'functions: staff_changes_are_kept',
  'storage: evening_answer with {fillfactor=70}',
  'storage: memory with {fillfactor=80}',
  'storage: sitting_answer with {fillfactor=70}',
  'triggers: answer_kept',
  'triggers: staff_change_kept',
];

async function execute(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(sql).finally(() => client.end());
}

describe('schema.prisma and the migrations', () => {
  let migrated: TestDatabase;
  let fromSchema: TestDatabase;
  let schema: string;

  beforeAll(async () => {
    [migrated, fromSchema, schema] = await Promise.all([
      freshDatabase(),
      emptyDatabase(),
      readFile(join(projectFolder, 'prisma', 'schema.prisma'), 'utf8'),
    ]);
    await execute(fromSchema.adminUrl, await sqlTo({ url: migrated.adminUrl, schema }));
  });
  afterAll(async () => {
    await migrated.drop();
    await fromSchema.drop();
  });

  it('make the same database, apart from what is written by hand', async () => {
    const [ours, theirs] = await Promise.all([catalogueOf(migrated.url), catalogueOf(fromSchema.url)]);
    expect(theirs.length).toBeGreaterThan(100);
    expect(theirs.filter((line) => !ours.includes(line))).toEqual([]);
    const extra = ours.filter((line) => !theirs.includes(line)).map((line) => line.split(' = ')[0]);
    expect(extra).toEqual(byHand);
  });

  it('leave Prisma nothing to migrate', async () => {
    const migrations = join(projectFolder, 'prisma', 'migrations');
    expect(await sqlTo({ url: migrated.adminUrl, schema, migrations })).toBe('');
  });

  it('are found to differ when the schema gets a column that no migration makes', async () => {
    const migrations = join(projectFolder, 'prisma', 'migrations');
    const changed = schema.replace('model Guess {', 'model Guess {\n  remark String?');
    expect(await sqlTo({ url: migrated.adminUrl, schema: changed, migrations })).toBe(
      '-- AlterTable\nALTER TABLE "guess" ADD COLUMN     "remark" TEXT;',
    );
  });
});
