import { calculatorsService } from '../../src/calculators/index.js';
import { calculatorListPage, calculatorPage } from '../../src/calculators/pages.js';
import { tryPage } from '../../src/calculators/try-page.js';
import type { CalculatorListPage, CalculatorPage, TryPage } from '../../src/calculators/page-types.js';
import { compileFamily } from '../../src/core/families/draw.js';
import type { BankQuestion, FamilyEntry } from '../../src/questions/index.js';
import { calculations } from '../../shared/safety-maths/index.js';
import { familyNamed } from '../core/families/shipped.js';

/** Pages of the calculators in several states, made by the program from the shipped families; only the bank around them is invented. */

const family = familyNamed('nf-ladder-base');
const entry: FamilyEntry = {
  code: family.id,
  title: family.title,
  questionId: 1,
  revision: family.revision,
  objective: 'LA-02',
  objectiveTitle: 'The right angle',
  calculator: 'ladder-base',
  regions: ['uk', 'eu', 'na'],
};
const bank: BankQuestion = {
  questionId: 1,
  code: family.id,
  revision: family.revision,
  item: { kind: 'numeric', family, compiled: (region) => compileFamily(family, region) },
  objective: { code: 'LA-02', title: 'The right angle', weight: 1 },
  topic: { code: 'LA', title: 'Ladders and working at height' },
  pack: { title: 'Safety core', version: '0.1.0', licence: 'CC BY-SA 4.0' },
  caution: () => ({
    id: 'height',
    sign: 'general',
    text: 'Work at height kills. Follow the ladder maker’s instructions.',
    source: 'hse',
    revision: 1,
  }),
  sources: 'HSE INDG455; 29 CFR 1926.1053',
  cites: [],
  checked: '2026-11-03',
};
const service = calculatorsService({
  questions: {
    families: () => Promise.resolve([entry]),
    get: () => Promise.resolve(bank),
    count: () => Promise.reject(new Error('not asked for')),
    catalogue: () => Promise.reject(new Error('not asked for')),
    papers: () => Promise.reject(new Error('not asked for')),
    skills: () => Promise.reject(new Error('not asked for')),
    forget: () => undefined,
  },
});

const worked = async (id: string, typed: Record<string, string[]>): Promise<CalculatorPage> =>
  calculatorPage(await service.work(null, id, typed, 'uk'));
const tried = async (more: { form: 'typed' | 'options'; value?: string; option?: string }): Promise<TryPage> =>
  tryPage(await service.tryOut(null, 'ladder-base', family.id, { seed: 7, region: 'uk', value: null, option: null, ...more }));

export const calculatorPages: { name: string; page: CalculatorListPage | CalculatorPage | TryPage }[] = [
  { name: 'calculators', page: calculatorListPage(calculations, '') },
  { name: 'calculators-found', page: calculatorListPage(service.list(null, 'ladder'), 'ladder') },
  { name: 'calculators-none', page: calculatorListPage(service.list(null, 'zebra'), 'zebra') },
  { name: 'calculator-empty', page: await worked('ladder-base', {}) },
  { name: 'calculator-ladder', page: await worked('ladder-base', { height: ['4.8 m'] }) },
  { name: 'calculator-fuse', page: await worked('fuse-from-power', { power: ['1.15 kW'] }) },
  {
    name: 'calculator-lead',
    page: await worked('dc-voltage-drop', { length_one_way: ['3 m'], resistance: ['3.3 ohm/km'], current: ['20'] }),
  },
  { name: 'calculator-antenna', page: await worked('compliance-distance', { eirp: ['100'], limit: ['2'] }) },
  { name: 'calculator-loads', page: await worked('extension-lead-load', { loads: ['2000', '990'] }) },
  { name: 'calculator-fault', page: await worked('ladder-base', { height: ['4.8 kg'] }) },
  { name: 'try-typed', page: await tried({ form: 'typed' }) },
  { name: 'try-not-understood', page: await tried({ form: 'typed', value: 'a bit' }) },
  { name: 'try-wrong', page: await tried({ form: 'typed', value: '20' }) },
  { name: 'try-options', page: await tried({ form: 'options' }) },
];
