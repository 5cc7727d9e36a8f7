import cookie from '@fastify/cookie';
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import Fastify, { LogController, type FastifyInstance, type FastifyServerOptions } from 'fastify';
import { accountsRoutes, accountsService, type AccountsService, type Installation } from '../accounts/index.js';
import { bankRoutes, bankService, queriesService } from '../bank/index.js';
import { calculatorsRoutes, calculatorsService } from '../calculators/index.js';
import { classesService } from '../classes/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { projectFolder } from '../platform/project-folder.js';
import { papersRoutes, papersService } from '../papers/index.js';
import { progressRoutes, progressService } from '../progress/index.js';
import { outlookRoutes, outlookService } from '../outlook/index.js';
import { planRoutes, planService } from '../plan/index.js';
import { questionsService } from '../questions/index.js';
import { packsRoutes, packsService, uploadsService } from '../packs/index.js';
import { enrol, enrolAll, studyRoutes, studyService } from '../study/index.js';
import { pages } from './chrome.js';
import { errorPages, RouteList } from './errors.js';
import { healthRoutes } from './health.js';
import { homeRoutes } from './home.js';
import { files } from './plugins/files.js';
import { forms } from './plugins/forms.js';
import { headers } from './plugins/headers.js';
import { session } from './plugins/session.js';
import { loadViews } from './plugins/views.js';

export interface AppNeeds {
  db: Db;
  clock: Clock;
  installation: Installation;
  /** Where people reach the server; null: wherever they asked. */
  origin: string | null;
  trustProxy: string[];
  logger: FastifyServerOptions['logger'];
}

export interface App {
  server: FastifyInstance;
  accounts: AccountsService;
  /** Hands in papers whose time has run out, with what was saved. To be called now and then. @returns how many */
  closeOverdue: () => Promise<number>;
  /** Every address with its method and who may use it. */
  routes: RouteList;
}

/** The whole application, not yet listening. */
export async function buildApp(needs: AppNeeds): Promise<App> {
  const { db, clock, installation, origin } = needs;
  const https = origin?.startsWith('https:') === true;
  const server = bareServer(needs);
  const routes = new RouteList();

  const questions = questionsService({ db, clock });
  const accounts = accountsService({ db, clock, installation, enrol });
  const study = studyService({ db, clock, questions });
  const plan = planService({ db, clock, questions, secret: installation.cookieSecret });
  const outlook = outlookService({ db, clock, questions });
  const papers = papersService({ db, clock, questions, outlook });
  const progress = progressService({ db, clock, questions });
  const classes = classesService({ db, clock });
  const calculators = calculatorsService({ questions });
  const bank = bankService({ db, questions });
  const queries = queriesService({ db, clock, questions });
  const uploads = uploadsService({ db, clock, packs: packsService({ db, enrolAll }), forget: questions.forget });

  pages(server, await loadViews(join(projectFolder, 'views'), join(projectFolder, 'public')), https);
  errorPages(server, routes);
  await headers(server, https);
  await server.register(cookie);
  session(server, accounts, https);
  routes.collect(server);
  await forms(server, installation.cookieSecret, https);
  await files(server, { assets: join(projectFolder, 'public'), compiled: join(projectFolder, 'dist') });
  await server.register(healthRoutes(db));
  await server.register(homeRoutes({ study, classes, questions, queries, papers }));
  await server.register(accountsRoutes({ accounts, clock, origin, bank: questions.count }));
  await server.register(studyRoutes(study));
  await server.register(planRoutes(plan));
  await server.register(outlookRoutes(outlook));
  await server.register(progressRoutes(progress));
  await server.register(papersRoutes(papers));
  await server.register(calculatorsRoutes(calculators));
  await server.register(packsRoutes(uploads));
  await server.register(bankRoutes({ bank, queries }));
  return { server, accounts, routes, closeOverdue: papers.setting.closeOverdue };
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
