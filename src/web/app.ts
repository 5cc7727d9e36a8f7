import cookie from '@fastify/cookie';
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import Fastify, { LogController, type FastifyInstance, type FastifyServerOptions } from 'fastify';
import type { AccountsService } from '../accounts/index.js';
import { projectFolder } from '../platform/project-folder.js';
import { pages } from './chrome.js';
import { errorPages, RouteList } from './errors.js';
import { healthRoutes } from './health.js';
import { buildServices, registerFeatures, type FeatureNeeds } from './features.js';
import { files } from './plugins/files.js';
import { forms } from './plugins/forms.js';
import { headers } from './plugins/headers.js';
import { session } from './plugins/session.js';
import { loadViews } from './plugins/views.js';

export interface AppNeeds extends FeatureNeeds {
  trustProxy: string[];
  logger: FastifyServerOptions['logger'];
}

export interface App {
  server: FastifyInstance;
  accounts: AccountsService;
  /** Hands in papers whose time has run out, and ends evenings left running, with what was saved. To be called now and then. @returns how many */
  closeOverdue: () => Promise<number>;
  /** Every address with its method and who may use it. */
  routes: RouteList;
}

/** The whole application, not yet listening. */
export async function buildApp(needs: AppNeeds): Promise<App> {
  const { db, installation, origin } = needs;
  const https = origin?.startsWith('https:') === true;
  const server = bareServer(needs);
  const routes = new RouteList();
  const services = buildServices(needs, (error) => server.log.warn({ err: error }, 'changes of class evenings could not be read'));

  pages(server, await loadViews(join(projectFolder, 'views'), join(projectFolder, 'public')), https);
  errorPages(server, routes);
  await headers(server, https);
  await server.register(cookie);
  session(server, services.accounts, https);
  routes.collect(server);
  await forms(server, installation.cookieSecret, https);
  await files(server, { assets: join(projectFolder, 'public'), compiled: join(projectFolder, 'dist') });
  await server.register(healthRoutes(db));
  await registerFeatures(server, services, needs);
  return { server, accounts: services.accounts, routes, closeOverdue: services.closeOverdue };
}

function bareServer({ trustProxy, logger }: AppNeeds): FastifyInstance {
  // References start with the process's own letters, so that two servers never give the same one.
  const prefix = randomBytes(3).toString('hex');
  let counter = 0;
  return Fastify({
    logger: logger ?? false,
    logController: new LogController({ disableRequestLogging: true }),
    trustProxy: trustProxy.length === 0 ? false : trustProxy,
    bodyLimit: 16 * 1024,
    requestTimeout: 30_000,
    connectionTimeout: 60_000,
    keepAliveTimeout: 30_000,
    genReqId: () => `${prefix}-${(counter += 1).toString(36)}`,
    return503OnClosing: true,
    forceCloseConnections: 'idle',
    routerOptions: { ignoreTrailingSlash: true, maxParamLength: 100 },
  });
}
