import { z } from 'zod';
import { rowNumber } from '../core/address-number.js';

/** What the forms and addresses of practical skills may hold. */

export const classParams = z.object({ class: rowNumber });
export const memberParams = z.object({ class: rowNumber, member: rowNumber });

/** A text as typed; what is wrong with it is said beside its field. */
const typed = z.string().max(2000);
const tick = z.literal('on').optional();
/** As many boxes as a skill may have criteria. */
const ticks = { c1: tick, c2: tick, c3: tick, c4: tick, c5: tick, c6: tick, c7: tick, c8: tick };
export const tickNames = Object.keys(ticks) as (keyof typeof ticks)[];

export const signForm = z
  .object({
    id: z.uuid(),
    skill: z.string().regex(/^[a-z0-9-]{1,40}\/[a-z0-9-]{1,40}$/),
    mark: z.string().max(40),
    seenOn: typed,
    remarks: typed,
    ...ticks,
  })
  .transform((form) => ({ ...form, ticked: tickNames.flatMap((name, at) => (form[name] === 'on' ? [at] : [])) }));

export const withdrawForm = z.object({ id: z.uuid(), reason: typed });
