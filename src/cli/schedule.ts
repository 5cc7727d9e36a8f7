import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { defaultWeights, memoryModel, type Memory, type MemoryModel } from '../core/memory.js';
import type { CommandIo } from './command.js';

/** `schedule <file>`: histories of answers in, memory after each of them out. */

const usage = 'npx rungwise schedule <file.json> [--json]';

const historySchema = z.object({
  id: z.string().max(200),
  weights: z.union([z.string(), z.array(z.number())]).default('default'),
  reviews: z
    .array(
      z.object({
        rating: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)], 'a rating is 1, 2, 3 or 4'),
        gapDays: z.number().int('gapDays is a whole number of days').min(0).max(100_000),
      }),
    )
    .min(1)
    .max(10_000),
});

const fileSchema = z.object({
  meta: z.object({ weights: z.record(z.string(), z.array(z.number())).default({}) }).optional(),
  cases: z.array(historySchema).max(10_000),
});

type History = z.infer<typeof historySchema>;

export async function run(args: string[], io: CommandIo): Promise<number> {
  let file: string | undefined;
  let json = false;
  try {
    const { values, positionals } = parseArgs({ args, options: { json: { type: 'boolean', default: false } }, allowPositionals: true });
    json = values.json;
    if (positionals.length !== 1) throw new Error('give one file of histories');
    file = positionals[0] as string;
    const content = fileSchema.safeParse(JSON.parse(await readFile(file, 'utf8')));
    if (!content.success) throw new Error(z.prettifyError(content.error));
    const named = { default: [...defaultWeights], ...content.data.meta?.weights };
    const cases = content.data.cases.map((history) => worked(history, named));
    io.out(json ? JSON.stringify({ cases }) : cases.map(text).join('\n'));
    return 0;
  } catch (error) {
    io.err(`${file === undefined ? '' : `${file}: `}${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
}

function worked(history: History, named: Record<string, number[]>) {
  const weights = typeof history.weights === 'string' ? named[history.weights] : history.weights;
  if (weights === undefined) throw new Error(`history ${history.id}: there are no weights named ${String(history.weights)}`);
  const model = modelFor(weights, history.id);
  let memory: Memory | null = null;
  let day = 0;
  const reviews = history.reviews.map(({ rating, gapDays }) => {
    day += gapDays;
    const before: number | null = memory === null ? null : model.recall(memory, day);
    memory = model.after(memory, day, rating);
    return {
      rating,
      gapDays,
      retrievabilityBefore: before,
      stability: memory.stability,
      difficulty: memory.difficulty,
      retrievabilityAfter: later(model, memory),
    };
  });
  return { id: history.id, reviews };
}

function modelFor(weights: number[], id: string): MemoryModel {
  try {
    return memoryModel(weights);
  } catch (error) {
    throw new Error(`history ${id}: ${(error as Error).message}`, { cause: error });
  }
}

function later(model: MemoryModel, memory: Memory): { d1: number; d7: number; d42: number } {
  const after = (days: number): number => model.recall(memory, memory.lastDay + days);
  return { d1: after(1), d7: after(7), d42: after(42) };
}

function text({ id, reviews }: ReturnType<typeof worked>): string {
  const lines = reviews.map(
    (r, i) =>
      `  ${String(i + 1).padStart(3)}  stability ${r.stability.toPrecision(6)} d  difficulty ${r.difficulty.toFixed(4)}  recall in 7 days ${r.retrievabilityAfter.d7.toFixed(3)}`,
  );
  return [id, ...lines].join('\n');
}
