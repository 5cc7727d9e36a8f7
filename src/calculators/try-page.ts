import { unitSpoken } from '../core/families/draw.js';
import { shortDate } from '../core/calendar.js';
import { tellTaleParts, workingPart } from '../core/outcome-parts.js';
import { regions } from '../../shared/regions.js';
import type { TryPage } from './page-types.js';
import { field } from './pages.js';
import type { Tried } from './service.js';

/** A question to try with fresh numbers; nothing is recorded. */

const letters = 'ABCDEFGHIJ';

export function tryPage(tried: Tried): TryPage {
  const { calculation, family, bank, draw, region, form, options, given } = tried;
  const here = `/calculators/${calculation.id}/try/${family.code}`;
  const caution = bank.caution(draw.caution);
  return {
    view: 'calculators/try',
    data: {
      familyTitle: family.title,
      calculatorTitle: calculation.title,
      calculatorHref: `/calculators/${calculation.id}?region=${region}`,
      action: here,
      seed: draw.seed,
      form,
      region,
      stem: draw.stem,
      options: options?.map(({ value, text }, index) => ({ letter: letters[index] ?? '?', value, text, chosen: value === given })) ?? null,
      entry: form === 'options' ? null : entry(tried),
      optionsWhy: form === 'options' ? tried.why : null,
      outcome: outcome(tried),
      freshHref: `${here}?form=${form}&region=${region}`,
      other: other(tried, here),
      caution: caution === null ? null : { sign: caution.sign, text: caution.text },
      titleBlock: [
        field('Objective', `${family.objective} ${family.objectiveTitle}`, 8, { name: true }),
        field('Draw', draw.seed, 4, { id: true }),
        field('Family', family.title, 4),
        field('Region', `${regions[region].title}, ${regions[region].supplyVoltage} V`, 4),
        field('Checked on', shortDate(bank.checked), 4),
        field('Source', bank.sources, 12),
        field('Pack and licence', `${bank.pack.title} ${bank.pack.version}, ${bank.pack.licence}`, 12),
      ],
    },
  };
}

function entry({ draw, given, why }: Tried): TryPage['data']['entry'] {
  const { unit } = draw.key;
  return {
    label: 'Your answer',
    unit,
    unitSpoken: unitSpoken(unit),
    readsUnit: unit,
    hint: `Type a number, with or without its unit.${draw.hint === null ? '' : ` Give ${draw.hint}.`}`,
    value: given ?? '',
    why,
  };
}

function other({ draw, form, canBeOptions, region }: Tried, here: string): TryPage['data']['other'] {
  if (draw.options !== null || (form === 'typed' && !canBeOptions)) return null;
  const next = form === 'typed' ? 'options' : 'typed';
  return {
    href: `${here}?form=${next}&seed=${draw.seed}&region=${region}`,
    label: next === 'options' ? 'Ask it with four answers to choose from' : 'Ask for the number itself',
  };
}

function outcome({ draw, compiled, options, given, mark }: Tried): TryPage['data']['outcome'] {
  if (mark === null || given === null) return null;
  const chosen = options?.find(({ value }) => value === given)?.text ?? given;
  return {
    verdict: {
      sign: mark.right ? 'yes' : 'no',
      word: mark.right ? 'Right.' : 'Not right.',
      fact: `The answer is ${draw.answerText}.`,
      said: `You ${options === null ? 'wrote' : 'chose'} “${chosen}”. Nothing is recorded here.`,
    },
    tellTales: tellTaleParts(mark, false),
    working: workingPart(compiled, draw),
  };
}
