import { readFileSync } from 'node:fs';
import { readResponses, type Row } from '../../src/core/analysis/read-responses.js';
import type { Responses } from '../../src/core/analysis/responses.js';

/** The data sets of tests/data/item-analysis. */

const file = (name: string): string => readFileSync(new URL(`../data/item-analysis/${name}`, import.meta.url), 'utf8');

/** Cells hold no commas and no quotation marks. */
export const rowsOf = (text: string): Row[] =>
  text
    .trim()
    .split('\n')
    .map((line, index) => ({ line: index + 1, cells: line.split(',') }));

/** Answers by option with their key, made by hand for the awkward cases. */
export function handMade(name: 'edge12' | 'flat4'): Responses {
  const read = readResponses(rowsOf(file(`${name}-raw.csv`)), rowsOf(file(`${name}-key.csv`)));
  if ('faults' in read) throw new Error(JSON.stringify(read.faults));
  return read.responses;
}

/** A thousand candidates from the published table of patterns. */
export function lsat6(): Responses {
  const { questions, patterns } = JSON.parse(file('lsat6-patterns.json')) as { questions: string[]; patterns: Record<string, number> };
  return {
    questions: questions.map((id) => ({ id, key: null })),
    rows: Object.entries(patterns).flatMap(([pattern, count]) => Array.from({ length: count }, () => [...pattern])),
  };
}

export const withoutBlanks = ({ questions, rows }: Responses): Responses => ({
  questions,
  rows: rows.filter((row) => row.every((choice) => choice !== null)),
});

type Pair = [number, number] | null;

export interface Expected {
  test: Record<'n' | 'k', number> &
    Record<'meanScore' | 'sd_n1' | 'kr20' | 'cronbachAlpha' | 'sem_n1', number | null> & {
      alphaFeldt95: Pair;
      kr20_mixedDenominators_trap: number | null;
    };
  items: {
    item: string;
    n: number;
    correct: number;
    facility: number;
    facilityWilson95: Pair;
    pointBiserialItemTotal: number | null;
    pointBiserialItemRest: number | null;
    pointBiserialItemRestFisher95: Pair;
    alphaIfDropped: number | null;
    discrimination27: { inclusive: number | null };
    options?: {
      option: string | null;
      isKey: boolean;
      count: number;
      pointBiserialTotal: number | null;
      pointBiserialRest: number | null;
    }[];
  }[];
}

export const expected = (
  JSON.parse(file('expected.json')) as {
    datasets: {
      lsat6: { missingAsWrong: Expected };
      flat4: { missingAsWrong: Expected };
      edge12: { missingAsWrong: Expected; completeCases: Expected };
    };
  }
).datasets;
