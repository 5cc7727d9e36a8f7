import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { archiveLimit } from '../../src/packs/archive.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { readSettings } from '../../src/platform/settings.js';

interface Service {
  image?: string;
  build?: string;
  profiles?: string[];
  environment: Record<string, string>;
  volumes: string[];
  ports?: string[];
  networks: string[] | Record<string, { ipv4_address: string }>;
  healthcheck: { test: string[] };
  depends_on?: Record<string, { condition: string }>;
  read_only?: boolean;
  cap_drop?: string[];
}

const read = (name: string): Promise<string> => readFile(join(projectFolder, name), 'utf8');
const text = await read('docker-compose.yml');
const { services, volumes, networks } = parse(text) as {
  services: Record<'server' | 'database' | 'proxy', Service>;
  volumes: Record<string, unknown>;
  networks: { inside: { ipam: { config: { subnet: string; ip_range: string }[] } } };
};
const caddyfile = await read('deploy/Caddyfile');
const hasCaddy = await promisify(execFile)('caddy', ['version']).then(
  () => true,
  () => false,
);

/** As compose would: `${NAME:-default}` and `${NAME:?words}`. */
function filled(environment: Record<string, string>, values: Record<string, string>): Record<string, string> {
  const fill = (value: string) =>
    value.replace(/\$\{(\w+)(?::([-?])([^}]*))?\}/g, (_all, name: string, kind: string, rest: string) => {
      return values[name] ?? (kind === '-' ? rest : '');
    });
  return Object.fromEntries(Object.entries(environment).map(([name, value]) => [name, fill(value)]));
}

it('The compose file starts the server only when PostgreSQL 18 is healthy, and asks both for their health', () => {
  expect(services.database.image).toBe('postgres:18');
  expect(services.server.depends_on).toEqual({ database: { condition: 'service_healthy' } });
  expect(services.database.healthcheck.test).toContain('pg_isready');
  expect(services.server.healthcheck.test.join(' ')).toContain('/health');
});

it('The compose file keeps all data in named volumes, backups in one of their own', () => {
  const mounted = Object.values(services).flatMap((service) => service.volumes.map((volume) => volume.split(':')[0] ?? ''));
  expect(mounted.filter((name) => !name.startsWith('./')).sort()).toEqual(Object.keys(volumes).sort());
  expect(services.server.volumes).toContain(`backups:${services.server.environment['RUNGWISE_BACKUPS']}`);
});

it('The compose file has no password of its own: without POSTGRES_PASSWORD nothing starts', () => {
  const uses = text.split('\n').filter((line) => /^\s+[A-Z_]+: .*PASSWORD/.test(line));
  expect(uses).toHaveLength(2);
  for (const line of uses) expect(line).toMatch(/\$\{POSTGRES_PASSWORD:\?[^}]+\}/);
});

it('The compose file gives the server settings that it understands', () => {
  expect(readSettings(filled(services.server.environment, { POSTGRES_PASSWORD: 'x1' }))).toMatchObject({
    host: '0.0.0.0',
    port: 3000,
    databaseUrl: 'postgresql://rungwise:x1@database:5432/rungwise',
    dataFolder: '/data',
    origin: undefined,
  });
});

it('The container of the server can write to its volumes and nowhere else, as an ordinary user without powers', async () => {
  expect(services.server).toMatchObject({ read_only: true, cap_drop: ['ALL'] });
  const dockerfile = await read('Dockerfile');
  const folders = services.server.volumes.map((volume) => volume.split(':')[1] ?? '');
  for (const folder of folders) expect(dockerfile).toMatch(new RegExp(`chown node:node .*${folder}`));
  expect(dockerfile.indexOf('USER node')).toBeGreaterThan(dockerfile.indexOf('chown'));
});

describe('the proxy with HTTPS', () => {
  const address = (services.proxy.networks as Record<string, { ipv4_address: string }>)['inside']?.ipv4_address ?? '';

  it('is there when it is asked for, and no other service is reached from outside', () => {
    expect(services.proxy.profiles).toEqual(['https']);
    expect(services.proxy.ports).toEqual(['80:80', '443:443']);
    expect(services.database.ports).toBeUndefined();
    expect(services.server.ports?.every((port) => port.startsWith('${RUNGWISE_LISTEN:-127.0.0.1}:'))).toBe(true);
  });

  it('is the one address that the server believes, and nobody else can be given it', () => {
    const { trustProxy } = readSettings(filled(services.server.environment, { POSTGRES_PASSWORD: 'x1' }));
    expect(trustProxy).toEqual([address]);
    // 172.30.73.128/25 is .128 to .255 of that network: the last part tells.
    expect(networks.inside.ipam.config).toEqual([{ subnet: '172.30.73.0/24', ip_range: '172.30.73.128/25' }]);
    expect(address).toMatch(/^172\.30\.73\.(\d|\d\d|1[01]\d|12[0-7])$/);
  });

  it('is given what its own file asks for, and the same address as the server', () => {
    const asked = [...caddyfile.matchAll(/\{\$(\w+)[:}]/g)].map((match) => match[1] ?? '');
    expect([...new Set(asked)].sort()).toEqual(Object.keys(services.proxy.environment).sort());
    const values = { POSTGRES_PASSWORD: 'x1', RUNGWISE_ORIGIN: 'https://club.example' };
    const [proxy, server] = [services.proxy, services.server].map(({ environment }) => filled(environment, values)['RUNGWISE_ORIGIN']);
    expect(proxy).toBe('https://club.example');
    expect(server).toBe(proxy);
    expect(services.proxy.volumes).toContain('./deploy/Caddyfile:/etc/caddy/Caddyfile:ro');
  });

  it('takes what the server takes, and lets go of a connection before the server does', async () => {
    const megabytes = Number(/max_size (\d+)MB/.exec(caddyfile)?.[1]);
    expect(megabytes * 1_000_000).toBeGreaterThan(archiveLimit + 100_000);
    const kept = Number(/keepAliveTimeout: ([\d_]+)/.exec(await read('src/web/app.ts'))?.[1]?.replaceAll('_', ''));
    expect(Number(/keepalive (\d+)s/.exec(caddyfile)?.[1]) * 1000).toBeLessThan(kept);
  });

  it('writes no address down, compresses nothing, and gives no time limit to what it passes on', () => {
    const lines = caddyfile.replace(/#.*/g, '');
    expect(lines).toMatch(/exclude http\.log\.access http\.log\.error http\.handlers\.reverse_proxy/);
    expect(lines.match(/\blog\b/g)).toHaveLength(3); // the one block, and the two names it leaves out
    expect(lines).not.toMatch(/\bencode\b|\bwrite\b|flush_interval|trusted_proxies|header_up/);
  });

  // Where Caddy is not installed there is nobody to ask, and the tests above are all there is.
  const kinds = hasCaddy ? ['public', 'club'] : [];
  for (const kind of kinds)
    it(`is understood by the Caddy that is installed here (${kind} certificates)`, async () => {
      const folder = await mkdtemp(join(tmpdir(), 'rungwise-proxy-'));
      const env = { ...process.env, XDG_DATA_HOME: folder, XDG_CONFIG_HOME: folder };
      Object.assign(env, filled(services.proxy.environment, { RUNGWISE_CERTIFICATE: kind }));
      const args = ['validate', '--adapter', 'caddyfile', '--config', join(projectFolder, 'deploy', 'Caddyfile')];
      const { stdout, stderr } = await promisify(execFile)('caddy', args, { env });
      await rm(folder, { recursive: true });
      expect(stdout + stderr).toContain('Valid configuration');
    });
});
