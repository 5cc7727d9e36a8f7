import pg from 'pg';

/** Everything in the public schema that a migration can make, one line for each thing: `part: name = definition`. */
const parts: Record<string, string> = {
  columns: `SELECT format('%s.%s = %s%s%s%s%s', c.relname, a.attname, format_type(a.atttypid, a.atttypmod), a.attidentity, a.attgenerated,
      CASE WHEN a.attnotnull THEN ' not null' ELSE '' END, coalesce(' default ' || pg_get_expr(d.adbin, d.adrelid), '')) AS line
    FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid LEFT JOIN pg_attrdef d ON d.adrelid = c.oid AND d.adnum = a.attnum
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p', 'v', 'm') AND a.attnum > 0 AND NOT a.attisdropped`,
  // PostgreSQL 18 lists "not null" here, too; columns have it already.
  constraints: `SELECT format('%s on %s = %s', conname, conrelid::regclass, pg_get_constraintdef(oid)) AS line
    FROM pg_constraint WHERE connamespace = 'public'::regnamespace AND contype <> 'n'`,
  indexes: `SELECT format('%s = %s', indexname, indexdef) AS line FROM pg_indexes WHERE schemaname = 'public'`,
  storage: `SELECT format('%s with %s', relname, reloptions) AS line
    FROM pg_class WHERE relnamespace = 'public'::regnamespace AND reloptions IS NOT NULL`,
  sequences: `SELECT format('%s %s %s..%s', sequencename, data_type, min_value, max_value) AS line FROM pg_sequences WHERE schemaname = 'public'`,
  enums: `SELECT format('%s %s', enumtypid::regtype, string_agg(enumlabel, ',' ORDER BY enumsortorder)) AS line FROM pg_enum GROUP BY enumtypid`,
  functions: `SELECT format('%s = %s', proname, pg_get_functiondef(oid)) AS line FROM pg_proc WHERE pronamespace = 'public'::regnamespace AND prokind <> 'a'`,
  triggers: `SELECT format('%s = %s', tgname, pg_get_triggerdef(t.oid)) AS line FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid
    WHERE c.relnamespace = 'public'::regnamespace AND NOT t.tgisinternal`,
};

/** @returns one line for each thing in the database, sorted, without the table that records the migrations */
export async function catalogueOf(url: string): Promise<string[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const lines: string[] = [];
    for (const [part, sql] of Object.entries(parts)) {
      const { rows } = await client.query<{ line: string }>(sql);
      lines.push(...rows.map(({ line }) => `${part}: ${line}`));
    }
    return lines.filter((line) => !line.includes('_prisma_migrations')).sort();
  } finally {
    await client.end();
  }
}
