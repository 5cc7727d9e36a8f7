import { readdirSync, readFileSync } from 'node:fs';
import type { CheckRecord } from '../../shared/safety-maths/check-record.js';

export type Published = CheckRecord & { source: { title: string }; reverify?: boolean };

const folder = new URL('../data/', import.meta.url);

/** Published values, each with its source and tolerance: tests/data/safety-values-*.json. */
export const publishedValues: readonly Published[] = readdirSync(folder)
  .filter((name) => name.startsWith('safety-values-'))
  .flatMap((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Published[]);
