import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../shared/numeric-answer/parse.js';
import { acceptNumber, draw } from '../../../src/core/families/draw.js';
import { holds } from '../../../src/core/families/evaluate.js';
import { figuresOf } from '../../../src/core/families/figures.js';
import { markNumber } from '../../../src/core/marking.js';
import { variants } from './shipped.js';

type Drawn = ReturnType<typeof draw>;

/** The answer as candidates may type it: alone, with its unit, with a decimal comma, after an equals sign, in wide figures. */
function typings({ key, answerText }: Drawn): string[] {
  const plain = String(key.shown);
  const comma = plain.replace('.', ',');
  // 1,234 may be a thousand and more: that is asked about, not read.
  const isClear = !/^\d{1,3},\d{3}$/.test(comma);
  const wide = plain.replace(/\d/g, (digit) => String.fromCharCode(digit.charCodeAt(0) + 0xfee0));
  return [plain, answerText, ` = ${plain} `, wide, ...(isClear ? [comma] : [])];
}

function faultsOf(drawn: Drawn): string[] {
  const { key, tellTales } = drawn;
  const texts = [drawn.stem, ...drawn.working];
  return [
    ...texts.filter((text) => /[{}]|NaN|undefined|Infinity/.test(text)).map((text) => `not filled in: ${text}`),
    ...(acceptNumber(drawn, key.shown) ? [] : [`${key.shown} is outside its own window`]),
    ...tellTales.filter(({ value }) => acceptNumber(drawn, value)).map(({ name }) => `${name} is taken for right`),
    ...typings(drawn).flatMap((text) => {
      const reading = readQuantity(text, key.unit);
      return reading.understood && markNumber(drawn, reading.value).right ? [] : [`"${text}" is not read as ${key.shown}`];
    }),
  ];
}

describe('a thousand draws', () => {
  it.each(variants)('of %s in %s meet their constraints, and are marked right when their own answer is typed', (_id, region, compiled) => {
    for (let seed = 1; seed <= 1000; seed += 1) {
      const drawn = draw(compiled, seed);
      expect([seed, ...faultsOf(drawn)]).toEqual([seed]);
      const inputs = new Map(Object.entries(drawn.inputs).map(([name, { value }]) => [name, value]));
      const { values } = figuresOf(compiled, inputs);
      if (!compiled.constraints.every((constraint) => holds(constraint, values, region))) expect.fail(`seed ${seed} breaks a constraint`);
    }
  });
});
