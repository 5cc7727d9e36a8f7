import { defineConfig } from 'prisma/config';

// Only the database client is made by Prisma's command. Migrations are applied by src/platform/migrate.ts, so no address
// of a database stands here; to use another of Prisma's commands, give it one.
export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
});
