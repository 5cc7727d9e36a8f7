import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { projectFolder } from '../../src/platform/project-folder.js';
import { readSettings } from '../../src/platform/settings.js';

interface Service {
  image?: string;
  build?: string;
  environment: Record<string, string>;
  volumes: string[];
  healthcheck: { test: string[] };
  depends_on?: Record<string, { condition: string }>;
}

const text = await readFile(join(projectFolder, 'docker-compose.yml'), 'utf8');
const { services, volumes } = parse(text) as { services: Record<'server' | 'database', Service>; volumes: Record<string, unknown> };

it('The compose file starts the server only when PostgreSQL 18 is healthy, and asks both for their health', () => {
  expect(services.database.image).toBe('postgres:18');
  expect(services.server.depends_on).toEqual({ database: { condition: 'service_healthy' } });
  expect(services.database.healthcheck.test).toContain('pg_isready');
  expect(services.server.healthcheck.test.join(' ')).toContain('/health');
});

it('The compose file keeps all data in named volumes', () => {
  const mounted = [services.database, services.server].flatMap((service) => service.volumes.map((volume) => volume.split(':')[0]));
  expect(mounted.sort()).toEqual(Object.keys(volumes).sort());
});

it('The compose file has no password of its own: without POSTGRES_PASSWORD nothing starts', () => {
  const uses = text.split('\n').filter((line) => /^\s+[A-Z_]+: .*PASSWORD/.test(line));
  expect(uses).toHaveLength(2);
  for (const line of uses) expect(line).toMatch(/\$\{POSTGRES_PASSWORD:\?[^}]+\}/);
});

it('The compose file gives the server settings that it understands', () => {
  const values: Record<string, string> = { POSTGRES_PASSWORD: 'x1', LOG_LEVEL: 'info' };
  const filled = Object.entries(services.server.environment).map(([name, value]) => [
    name,
    value.replace(/\$\{(\w+)[^}]*\}/g, (_all, variable: string) => values[variable] ?? ''),
  ]);
  expect(readSettings(Object.fromEntries(filled) as Record<string, string>)).toMatchObject({
    host: '0.0.0.0',
    port: 3000,
    databaseUrl: 'postgresql://rungwise:x1@database:5432/rungwise',
    dataFolder: '/data',
    origin: undefined,
  });
});
