import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { FastifyInstance } from 'fastify';
import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Db } from '../platform/db.js';

/**
 * Figures for monitoring, in the text format that monitoring programs read. They are off unless asked for, and on a listener
 * of their own, so that they are never public by accident. They count routes, never addresses: no name, number or token.
 */
export function metrics(app: FastifyInstance, db: Db): Registry {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const seconds = new Histogram({
    name: 'rungwise_request_seconds',
    help: 'Time from a request to the end of its answer, by method, route and status.',
    labelNames: ['method', 'route', 'status'],
    buckets: [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10],
    registers: [registry],
  });
  app.addHook('onResponse', async (request, reply) => {
    const route = request.is404 ? 'none' : (request.routeOptions.url ?? 'none');
    seconds.observe({ method: request.method, route, status: String(reply.statusCode) }, reply.elapsedTime / 1000);
  });
  connections(db, registry);
  lastRuns(db, registry);
  return registry;
}

function connections({ pool }: Db, registry: Registry): void {
  new Gauge({
    name: 'rungwise_database_connections',
    help: 'Connections to the database: in use, idle, and requests that wait for one.',
    labelNames: ['state'],
    registers: [registry],
    collect() {
      this.set({ state: 'used' }, pool.totalCount - pool.idleCount);
      this.set({ state: 'idle' }, pool.idleCount);
      this.set({ state: 'awaited' }, pool.waitingCount);
    },
  });
}

function lastRuns(db: Db, registry: Registry): void {
  new Gauge({
    name: 'rungwise_job_last_done_seconds',
    help: 'When each job was last done, in seconds since 1970, over all servers.',
    labelNames: ['job'],
    registers: [registry],
    async collect() {
      // A database that is away says nothing here; /health says so.
      const found = await db.pool
        .query<{ job: string; at: Date }>(`SELECT job, max(finished_at) AS at FROM job_run WHERE outcome = 'done' GROUP BY job`)
        .catch(() => ({ rows: [] }));
      for (const { job, at } of found.rows) this.set({ job }, at.getTime() / 1000);
    },
  });
}

export interface MetricsListener {
  port: number;
  close(): Promise<void>;
}

/** Answers `GET /metrics` there and nothing else. @throws when the place is taken */
export async function listenForMetrics(registry: Registry, { host, port }: { host: string; port: number }): Promise<MetricsListener> {
  const server = createServer((request, response) => {
    if (request.method !== 'GET' || request.url !== '/metrics') return void response.writeHead(404).end();
    registry.metrics().then(
      (text) => response.writeHead(200, { 'content-type': registry.contentType }).end(text),
      () => response.writeHead(500).end(),
    );
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen({ host, port }, resolve);
  });
  return {
    port: (server.address() as AddressInfo).port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
