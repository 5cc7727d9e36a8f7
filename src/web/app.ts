import cookie from '@fastify/cookie';
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import type { Registry } from 'prom-client';
import Fastify, { LogController, type FastifyInstance, type FastifyServerOptions } from 'fastify';
import type { AccountsService } from '../accounts/index.js';
import { projectFolder } from '../platform/project-folder.js';
import { pages } from './chrome.js';
import { errorPages, RouteList } from './errors.js';
import { healthRoutes } from './health.js';
import { metrics } from './metrics.js';
import { buildServices, registerFeatures, type FeatureNeeds } from './features.js';
import { audit } from './plugins/audit.js';
import { badAddress } from './plugins/bad-address.js';
import { files } from './plugins/files.js';
import { forms } from './plugins/forms.js';
import { headers } from './plugins/headers.js';
import { session } from './plugins/session.js';
import { loadViews } from './plugins/views.js';
import { quieter } from './quieter-log.js';

export interface AppNeeds extends FeatureNeeds {
  trustProxy: string[];
  logger: FastifyServerOptions['logger'];
  /** Whether figures for monitoring are counted. */
  measured?: boolean;
}

export interface App {
  server: FastifyInstance;
  accounts: AccountsService;
  /** What the jobs call. */
  work: {
    /** Hands in papers whose time has run out, and ends evenings left running, with what was saved. @returns how many */
    closeOverdue: () => Promise<number>;
    retention: () => Promise<{ note: string }>;
    noteRemoved: () => Promise<number>;
  };
  /** Every address with its method and who may use it. */
  routes: RouteList;
  /** Figures for monitoring, when they are counted. */
  figures: Registry | null;
}

/** The whole application, not yet listening. */
export async function buildApp(needs: AppNeeds): Promise<App> {
  const { db, installation, origin } = needs;
  const https = origin?.startsWith('https:') === true;
  const server = bareServer(needs);
  const routes = new RouteList();
  const services = buildServices(needs, (error) => server.log.warn({ err: error }, 'something behind the pages went wrong'));

  pages(server, await loadViews(join(projectFolder, 'views'), join(projectFolder, 'public')), https);
  const figures = needs.measured === true ? metrics(server, db) : null;
  errorPages(server, routes);
  await headers(server, https);
  await server.register(cookie);
  session(server, services.accounts, { https, clock: needs.clock });
  routes.collect(server);
  audit(server, needs);
  await forms(server, installation.cookieSecret, https);
  await files(server, { assets: join(projectFolder, 'public'), compiled: join(projectFolder, 'dist') });
  await server.register(healthRoutes(db));
  await registerFeatures(server, services, needs);
  return { server, accounts: services.accounts, routes, figures, work: services.work };
}

function bareServer({ trustProxy, logger, clock }: AppNeeds): FastifyInstance {
  // References start with the process's own letters, so that two servers never give the same one.
  const prefix = randomBytes(3).toString('hex');
  let counter = 0;
  return Fastify({
    logger: typeof logger === 'object' ? { ...logger, hooks: quieter(clock) } : (logger ?? false),
    logController: new LogController({ disableRequestLogging: true }),
    trustProxy: trustProxy.length === 0 ? false : trustProxy,
    bodyLimit: 16 * 1024,
    requestTimeout: 30_000,
    connectionTimeout: 60_000,
    keepAliveTimeout: 30_000,
    // Address and headers, cookies among them. Who sends too slowly is looked for often, or the limits above would be half a minute late.
    http: { maxHeaderSize: 16 * 1024, connectionsCheckingInterval: 2_000 },
    frameworkErrors: badAddress,
    genReqId: () => `${prefix}-${(counter += 1).toString(36)}`,
    return503OnClosing: true,
    forceCloseConnections: 'idle',
    routerOptions: { ignoreTrailingSlash: true, maxParamLength: 100 },
  });
}
