import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { RungwiseError } from '../core/errors.js';
import { paperParams } from './forms.js';
import { printPage } from './print-page.js';
import type { PrintWish } from './print-page-types.js';
import type { SettingService } from './set-service.js';

/** Class papers on paper. The page is the print: the browser turns it into sheets. */

const config = { access: 'set-papers' as const };

const number = z
  .string()
  .regex(/^[1-9]\d?$/)
  .transform(Number);

const wishForm = z.object({
  what: z.enum(['papers', 'sheets', 'key']).default('papers'),
  from: number.optional(),
  to: number.optional(),
  size: z.enum(['a4', 'letter']).default('a4'),
  large: z.literal('on').optional(),
});

/** @throws RungwiseError for a version that the paper does not have, and for anything that our form does not send */
function readWish(query: unknown, versions: number): PrintWish {
  const form = wishForm.safeParse(query ?? {});
  if (!form.success) throw new RungwiseError('form-not-understood', 'no such way of printing');
  const { what, size, large, from = 1, to = versions } = form.data;
  if (Math.max(from, to) > versions) throw new RungwiseError('form-not-understood', `the paper has ${versions} versions`);
  // Whoever chooses 3 to 2 means both of them.
  return { what, size, large: large !== undefined, from: Math.min(from, to), to: Math.max(from, to) };
}

export function printRoutes(app: FastifyInstance, setting: SettingService): void {
  app.get('/class-papers/:paper/print', { config }, async (request, reply) => {
    const params = paperParams.safeParse(request.params);
    if (!params.success) throw new RungwiseError('not-found');
    const person = request.who();
    const { paper } = params.data;
    const wish = readWish(request.query, (await setting.headOf(person, paper)).versions);
    const numbers = Array.from({ length: wish.to - wish.from + 1 }, (_, index) => wish.from + index);
    const { head, versions } = await setting.versions(person, paper, numbers);
    return reply.page(printPage(head, versions, wish, person), {
      title: `Print ${head.title}`,
      scripts: ['print-page'],
      styles: ['print-paper.css'],
    });
  });
}
