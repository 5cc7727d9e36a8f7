import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { atLeast } from '../core/outlook/poisson-binomial.js';
import type { CommandIo } from './command.js';

/** `outlook <file>`: chances of right answers and a pass mark in, the chance of passing out. */

const usage = 'npx rungwise outlook <file.json> [--json]';

const paperSchema = z.object({
  probabilities: z.array(z.number().min(0, 'a probability lies between 0 and 1').max(1, 'a probability lies between 0 and 1')).max(2000),
  passMark: z.number().int('passMark is a whole number'),
});
type Paper = z.infer<typeof paperSchema>;

export async function run(args: string[], io: CommandIo): Promise<number> {
  let file: string | undefined;
  try {
    const { values, positionals } = parseArgs({ args, options: { json: { type: 'boolean', default: false } }, allowPositionals: true });
    if (positionals.length !== 1) throw new Error('give one file with probabilities and a pass mark');
    file = positionals[0] as string;
    const content: unknown = JSON.parse(await readFile(file, 'utf8'));
    const papers = (Array.isArray(content) ? z.array(paperSchema).max(10_000) : paperSchema).safeParse(content);
    if (!papers.success) throw new Error(z.prettifyError(papers.error));
    const worked = resultOf(papers.data);
    io.out(
      values.json
        ? JSON.stringify(worked)
        : [worked]
            .flat()
            .map(({ pass }) => `chance of passing: ${pass}`)
            .join('\n'),
    );
    return 0;
  } catch (error) {
    io.err(`${file === undefined ? '' : `${file}: `}${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
}

function resultOf(papers: Paper | Paper[]): { pass: number } | { pass: number }[] {
  const one = ({ probabilities, passMark }: Paper) => ({ pass: atLeast(probabilities, passMark) });
  return Array.isArray(papers) ? papers.map(one) : one(papers);
}
