import type { FastifyReply } from 'fastify';
import { errorCodes } from '../../core/errors.js';

/**
 * An address that cannot be taken apart, or has a part longer than any of ours. No route and no hook is reached by it, so the words are
 * plain and the strictest headers stand here; Fastify itself would repeat the address.
 */
export function badAddress(_error: unknown, _request: unknown, reply: FastifyReply): void {
  const { status, title, message } = errorCodes['not-found'];
  void reply
    .code(status)
    .headers({
      'content-security-policy': "default-src 'none';base-uri 'none';frame-ancestors 'none'",
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'cross-origin-opener-policy': 'same-origin',
      'cache-control': 'no-store',
    })
    .type('text/plain; charset=utf-8')
    .send(`${title}\n${message}\n`);
}
