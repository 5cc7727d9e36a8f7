import helmet from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';

/**
 * Headers on every answer. Nothing but our own files may load, no script stands in a page, nobody may frame us.
 * The referrer stays within the server: forms then carry a true Origin, which the check on forms reads.
 */
export async function headers(app: FastifyInstance, https: boolean): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'"],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    referrerPolicy: { policy: 'same-origin' },
    crossOriginOpenerPolicy: { policy: 'same-origin' },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    frameguard: { action: 'deny' },
    hsts: https ? { maxAge: 15_552_000, includeSubDomains: false } : false,
  });
}
