import type { FastifyInstance } from 'fastify';
import { accountsRoutes, accountsService, type Installation } from '../accounts/index.js';
import { classQuestionRoutes, questionFiguresService, tableRoutes, tableService } from '../analysis/index.js';
import { bankRoutes, bankService, queriesService } from '../bank/index.js';
import { calculatorsRoutes, calculatorsService } from '../calculators/index.js';
import { joiningService, memberRoutes, memberService, peopleRoutes, peopleService } from '../classes/index.js';
import { eveningsRoutes, eveningsService } from '../evenings/index.js';
import { classChances, outlookRoutes, outlookService } from '../outlook/index.js';
import { packsRoutes, packsService, uploadsService } from '../packs/index.js';
import { papersRoutes, papersService } from '../papers/index.js';
import { heldService, personalDataRoutes, removalService, retentionService, type RemovedList } from '../personal-data/index.js';
import { planRoutes, planService } from '../plan/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { progressRoutes, progressService } from '../progress/index.js';
import { questionsService } from '../questions/index.js';
import { reportsRoutes, reportsService } from '../reports/index.js';
import { skillsRoutes, skillsService } from '../skills/index.js';
import { enrol, enrolAll, studyRoutes, studyService } from '../study/index.js';
import { teachingRoutes, teachingService } from '../teaching/index.js';
import { upkeepRoutes, upkeepService, type ServerPlace } from '../upkeep/index.js';
import { homeRoutes } from './home.js';

/** Every feature's service, and the routes that lead to it. */

export interface FeatureNeeds {
  db: Db;
  clock: Clock;
  installation: Installation;
  /** Where people reach the server; null: wherever they asked. */
  origin: string | null;
  /** The file beside the backups that says who was removed. */
  removedList?: RemovedList;
  /** What this process knows of itself and of its disk. */
  place: ServerPlace;
}

type Services = ReturnType<typeof buildServices>;

type KeepingNeeds = Pick<FeatureNeeds, 'db' | 'clock'> & { removedList: RemovedList | undefined };

/** How long people are kept, and their removal. */
function keepingServices({ db, clock, removedList }: KeepingNeeds, log: (error: unknown) => void) {
  const removal = removalService({ db, clock, removedList: removedList ?? null, log });
  return { held: heldService({ db, clock }), removal, retention: retentionService({ db, clock, removal }) };
}

/** @param log gets what went wrong where nobody is waiting for an answer */
export function buildServices({ db, clock, installation, removedList, place }: FeatureNeeds, log: (error: unknown) => void) {
  const questions = questionsService({ db, clock });
  const accounts = accountsService({ db, clock, installation, enrol });
  const outlook = outlookService({ db, clock, questions });
  const progress = progressService({ db, clock, questions });
  const teaching = teachingService({ db, clock, questions, chances: classChances({ db, questions }) });
  const papers = papersService({ db, clock, questions, outlook });
  const evenings = eveningsService({ db, clock, questions, log });
  const kept = keepingServices({ db, clock, removedList }, log);
  return {
    clock,
    questions,
    accounts,
    outlook,
    progress,
    teaching,
    papers,
    evenings,
    study: studyService({ db, clock, questions }),
    plan: planService({ db, clock, questions, secret: installation.cookieSecret }),
    joining: joiningService({ db, clock, accounts }),
    members: memberService({ db, clock, accounts }),
    people: peopleService({ db, clock, questions }),
    tables: tableService({ clock }),
    figures: questionFiguresService({ db, clock, questions }),
    skills: skillsService({ db, clock, questions }),
    reports: reportsService({ db, clock, questions, teaching, progress, outlook }),
    ...kept,
    upkeep: upkeepService({ db, clock, place }),
    calculators: calculatorsService({ questions }),
    bank: bankService({ db, questions }),
    queries: queriesService({ db, clock, questions }),
    uploads: uploadsService({ db, clock, packs: packsService({ db, enrolAll }), forget: questions.forget }),
    work: {
      closeOverdue: async (): Promise<number> => (await papers.setting.closeOverdue()) + (await evenings.holding.endForgotten()),
      retention: kept.retention.run,
      noteRemoved: kept.removal.listRemoved,
    },
  };
}

export async function registerFeatures(server: FastifyInstance, services: Services, { origin }: FeatureNeeds): Promise<void> {
  const { accounts, clock, joining, questions, people, members } = services;
  await server.register(homeRoutes(services));
  await server.register(accountsRoutes({ accounts, clock, origin, bank: questions.count, inClasses: joining.isInAny }));
  await server.register(studyRoutes(services.study));
  await server.register(planRoutes(services.plan));
  await server.register(outlookRoutes(services.outlook));
  await server.register(progressRoutes(services.progress));
  await server.register(calculatorsRoutes(services.calculators));
  await server.register(packsRoutes(services.uploads));
  await server.register(bankRoutes(services));
  await server.register(peopleRoutes({ people, members, origin }));
  await server.register(memberRoutes({ joining, origin }));
  await server.register(teachingRoutes(services.teaching));
  await server.register(papersRoutes(services.papers));
  await server.register(tableRoutes(services.tables));
  await server.register(classQuestionRoutes(services.figures));
  await server.register(eveningsRoutes({ evenings: services.evenings, origin }));
  await server.register(skillsRoutes(services.skills));
  await server.register(reportsRoutes(services.reports));
  await server.register(personalDataRoutes(services));
  await server.register(upkeepRoutes(services.upkeep));
}
