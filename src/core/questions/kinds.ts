import { z } from 'zod';
import { keySchema } from '../syllabus.js';
import { checkKey, commonFields, text, whySchema } from './fields.js';

/** What a JSON Schema can say of lists with one key; the check says the same in words. */
const oneKey = { contains: { required: ['key'] }, minContains: 1, maxContains: 1 };
const keyOrWhy = { anyOf: [{ required: ['key'] }, { required: ['why'] }] };
// oxlint-disable-next-line unicorn/no-thenable -- `then` is the keyword of JSON Schema; nothing awaits this
const falseNeedsWhy = { if: { properties: { holds: { const: false } } }, then: { required: ['why'] } };
const someOfEach = { allOf: [true, false].map((holds) => ({ contains: { properties: { holds: { const: holds } } } })) };

/** The kinds of fixed question. Families, whose numbers are fresh each time, are in families/schema.ts. */

export const optionSchema = z
  .strictObject({
    text: text(240),
    /** True on the one right option; left out on the others. */
    key: z.literal(true).optional(),
    /** Needed on a wrong option. */
    why: whySchema.optional(),
  })
  .meta(keyOrWhy);

/** Single best answer. */
export const singleQuestionSchema = z
  .strictObject({
    ...commonFields,
    kind: z.literal('single'),
    options: z.array(optionSchema).min(3).max(5).meta(oneKey),
    /** `fixed` keeps the options as written (numbers in order); otherwise they are shuffled by seed. */
    order: z.literal('fixed').optional(),
  })
  .superRefine((question, context) => checkKey(question.options, 'options', context));

/** Several may be true: each statement is judged by itself. */
export const severalQuestionSchema = z
  .strictObject({
    ...commonFields,
    kind: z.literal('several'),
    statements: z
      .array(
        z
          .strictObject({
            text: text(240),
            holds: z.boolean(),
            /** Needed on a false statement: why people believe it, and what harm it would do. On a true one: why it may be doubted. */
            why: whySchema.optional(),
          })
          .meta(falseNeedsWhy),
      )
      .min(3)
      .max(6)
      .meta(someOfEach),
  })
  .superRefine(({ statements }, context) => {
    const holding = statements.filter(({ holds }) => holds).length;
    if (holding === 0 || holding === statements.length) {
      const message = 'at least one statement must hold and at least one must not';
      context.addIssue({ code: 'custom', path: ['statements'], message });
    }
    statements.forEach(({ holds, why }, index) => {
      if (!holds && why === undefined)
        context.addIssue({
          code: 'custom',
          path: ['statements', index, 'why'],
          message: 'a false statement must say why people believe it',
        });
    });
  });

/** Put the steps in order; they are written in the right one. */
export const orderQuestionSchema = z
  .strictObject({
    ...commonFields,
    kind: z.literal('order'),
    steps: z
      .array(
        z.strictObject({
          text: text(160),
          /** Why it comes here, and what happens to people who do it sooner or later. */
          why: whySchema,
          /** It and the step written before it may change places. */
          tied: z.literal(true).optional(),
        }),
      )
      .min(3)
      .max(6),
  })
  .superRefine(({ steps }, context) => {
    if (steps[0]?.tied) context.addIssue({ code: 'custom', path: ['steps', 0, 'tied'], message: 'nothing stands before the first step' });
    if (steps.filter(({ tied }) => !tied).length < 2)
      context.addIssue({ code: 'custom', path: ['steps'], message: 'two steps at least must have an order' });
  });

/** Match pairs: each left one goes with one right one, which may serve twice or not at all. */
export const pairsQuestionSchema = z.strictObject({
  ...commonFields,
  kind: z.literal('pairs'),
  pairs: z
    .array(
      z.strictObject({
        left: text(120),
        right: text(80),
        /** Why it goes there, and what harm the likeliest mistake would do. */
        why: whySchema,
      }),
    )
    .min(3)
    .max(6),
  /** Right-hand texts that go with nothing. */
  spare: z
    .array(z.strictObject({ text: text(80), why: whySchema }))
    .min(1)
    .max(3)
    .optional(),
});

/** Mark the place on a drawing: places are named parts of it. */
export const placeQuestionSchema = z
  .strictObject({
    ...commonFields,
    kind: z.literal('place'),
    drawing: keySchema,
    places: z
      .array(
        z
          .strictObject({
            /** A named part of the drawing. */
            part: keySchema,
            /** Where it is, for somebody who cannot see the drawing; it must not give the answer away. */
            text: text(160),
            key: z.literal(true).optional(),
            why: whySchema.optional(),
          })
          .meta(keyOrWhy),
      )
      .min(3)
      .max(6)
      .meta(oneKey),
  })
  .superRefine((question, context) => checkKey(question.places, 'places', context));
