import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { errorCodes, RungwiseError, type ErrorCode } from '../core/errors.js';
import { isDatabaseAway, isDiskFull } from '../platform/db.js';
import type { ErrorPage } from './page-types.js';

/**
 * The one handler of everything that goes wrong. A page says what is so and what to do, with a reference number;
 * what exactly happened stands in the log under the same number and nowhere else.
 */
export function errorPages(app: FastifyInstance, routes: RouteList): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const failure = failureOf(error, request.routeOptions.config.tooLarge);
    const { status } = errorCodes[failure.code];
    if (status >= 500) request.log.error({ err: error, reference: request.id }, 'request failed');
    // A form that our pages cannot have sent is worth a look; what people mistype is not.
    else
      request.log[failure.code === 'form-not-understood' ? 'warn' : 'info'](
        { code: failure.code, detail: error.message, reference: request.id },
        'request refused',
      );
    if (failure.retryAfterSeconds !== undefined) reply.header('retry-after', String(failure.retryAfterSeconds));
    return errorReply(request, reply, failure);
  });

  app.setNotFoundHandler((request, reply) => {
    const methods = routes.methodsOf(pathOf(request));
    if (methods.length === 0) return errorReply(request, reply, { code: 'not-found' });
    reply.header('allow', methods.join(', '));
    return errorReply(request, reply, { code: 'wrong-method' });
  });
}

declare module 'fastify' {
  interface FastifyContextConfig {
    /** What is said of a body over the route's limit, where it is not the usual. */
    tooLarge?: ErrorCode;
  }
}

interface Failure {
  code: ErrorCode;
  retryAfterSeconds?: number | undefined;
}

/** Which line of the table a thrown thing belongs to. */
function failureOf(error: FastifyError, tooLarge: ErrorCode = 'too-large'): Failure {
  if (error instanceof RungwiseError) return { code: error.code, retryAfterSeconds: error.retryAfterSeconds };
  if (isDatabaseAway(error)) return { code: 'database-away', retryAfterSeconds: 5 };
  if (isDiskFull(error)) return { code: 'disk-full' };
  if (error.code?.startsWith('FST_CSRF_') === true) return { code: 'form-expired' };
  switch (error.statusCode) {
    case 404:
      return { code: 'not-found' };
    case 413:
      return { code: tooLarge };
    case 415:
      return { code: 'wrong-kind' };
    default:
      return {
        code: error.statusCode !== undefined && error.statusCode >= 400 && error.statusCode < 500 ? 'form-not-understood' : 'internal',
      };
  }
}

function errorReply(request: FastifyRequest, reply: FastifyReply, { code, retryAfterSeconds }: Failure): FastifyReply {
  const { status, title, message } = errorCodes[code];
  const wait = retryAfterSeconds === undefined || code !== 'too-many-tries' ? '' : ` Try again in ${waitWords(retryAfterSeconds)}.`;
  const page: ErrorPage = {
    view: 'errors/error',
    data: {
      status,
      heading: title,
      message: message + wait,
      reference: status >= 500 ? request.id : null,
      ...(wayOn[code] ?? { backHref: '/', backLabel: 'Go to the start' }),
    },
  };
  reply.code(status);
  return reply.page(page, { title });
}

/** Where an error leads that is not the start. */
const wayOn: Partial<Record<ErrorCode, { backHref: string; backLabel: string }>> = {
  'confirm-first': { backHref: '/confirm', backLabel: 'Type your password' },
  'codes-first': { backHref: '/me/codes', backLabel: 'Set them up' },
};

const waitWords = (seconds: number): string => (seconds < 90 ? `${seconds} seconds` : `${Math.ceil(seconds / 60)} minutes`);

const pathOf = (request: FastifyRequest): string => request.url.split('?', 1)[0] as string;

/** The addresses there are, collected as they are added, so that a wrong method can be told from a wrong address. */
export class RouteList {
  readonly routes: { method: string; url: string; access: string }[] = [];

  collect(app: FastifyInstance): void {
    app.addHook('onRoute', ({ method, url, config }) => {
      for (const one of [method].flat()) this.routes.push({ method: one, url, access: config?.access ?? '' });
    });
  }

  methodsOf(path: string): string[] {
    return [...new Set(this.routes.filter(({ url }) => matches(url, path)).map(({ method }) => method))].sort();
  }
}

function matches(pattern: string, path: string): boolean {
  const wanted = pattern.split('/');
  const given = path.split('/');
  if (wanted.at(-1) === '*') return false;
  return (
    wanted.length === given.length && wanted.every((part, index) => (part.startsWith(':') ? given[index] !== '' : part === given[index]))
  );
}
