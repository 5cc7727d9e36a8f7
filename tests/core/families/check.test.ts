import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkFamily, draw } from '../../../src/core/families/draw.js';
import { familySchema } from '../../../src/core/families/schema.js';
import { answerWith, invented, inventedCompiled, inventedFamily } from './invented.js';

const faultsOf = (changes: Record<string, unknown>): string[] =>
  checkFamily(inventedFamily(changes)).map(({ path, message }) => `${path.join('.')}: ${message}`);

const tale = (changes: Record<string, unknown>): unknown[] => {
  const [first, ...rest] = invented()['tellTales'] as object[];
  return [{ ...first, ...changes }, ...rest];
};

describe('checking a family', () => {
  it('finds nothing in a sound one', () => {
    expect(faultsOf({})).toEqual([]);
  });

  it.each([
    ['a formula that cannot be read', { answer: answerWith({ expr: 'P / (V' }) }, /^answer\.expr: column 7: Unclosed \(/],
    ['a name that is not there', { answer: answerWith({ expr: 'P / W' }) }, /^answer\.expr: column 5: nothing is called W/],
    [
      'a list where a number is needed',
      { constants: { V: { value: [230], unit: 'V', basis: 'read' } } },
      /V is a list, and a number is needed here/,
    ],
    ['unlike things added', { derived: { A: 'P + V' } }, /^derived\.A: the units do not fit: column 5: a power and a voltage stand/],
    [
      'an answer of the wrong kind',
      { answer: answerWith({ expr: 'P * V' }) },
      /^answer\.expr: the formula gives a quantity of another kind/,
    ],
    ['a logarithm of a power', { derived: { A: 'log10(P)' } }, /^derived\.A: the units do not fit: column 7: a power stands where a plain/],
    [
      'a unit there is not',
      { constants: { V: { value: 230, unit: 'volz', basis: 'read' } } },
      /^constants\.V\.unit: there is no unit "volz"/,
    ],
    ['a constraint that compares nothing', { constraints: ['P'] }, /^constraints\.0: column 2: a comparison/],
    ['a name used twice', { derived: { P: '1' } }, /^derived\.P: the name P is used twice/],
    ['the answer named as an input', { answer: answerWith({ symbol: 'P' }) }, /^answer\.symbol: the name P is used twice/],
    ['derived values in a ring', { derived: { A: 'B', B: 'A' } }, /^derived\.A: A, B are worked from each other in a ring/],
    ['a placeholder without a number', { steps: ['{W} W'] }, /^steps\.0: \{W\} prints nothing/],
    ['a stray brace', { steps: ['{P W'] }, /^steps\.0: a brace belongs to no placeholder/],
    [
      'a story without its input',
      { stories: ['A heater on {V} V: how many amperes?'] },
      /^stories\.0: the story does not print the input \{P\}/,
    ],
    [
      'a story that tells the answer',
      { stories: ['{P} W, {V} V, {I} A: how many amperes?'] },
      /^stories\.0: the story prints the answer \{I\}/,
    ],
    [
      'a story without the unit',
      { stories: ['A heater takes {P} W. What current?'] },
      /^stories\.0: the story does not name the unit of the answer, A/,
    ],
    [
      'an input that does not print',
      { inputs: { P: { label: 'p', unit: 'W', choices: [100.00001, 200] } } },
      /^inputs\.P: some of its values do not print in full/,
    ],
    [
      'constraints that nothing meets',
      { constraints: ['P > 5000'] },
      /^constraints: in uk too few sets of numbers make a question.*: 0 found/,
    ],
    ['a division by zero', { answer: answerWith({ expr: 'P / 0' }) }, /^constraints: in uk too few sets/],
    ['an answer below zero', { answer: answerWith({ expr: '0 - P' }) }, /^constraints: in uk too few sets/],
    ['a derived value without end', { derived: { D: '1 / 0' } }, /^derived\.D: D is not a finite number/],
    ['more wrong values asked for than there are', { minWrong: 4 }, /^minWrong: 4 usable tell-tales are asked for, and there are 3/],
    ['two tell-tales of one name', { tellTales: tale({ name: 'halved' }) }, /^tellTales\.1\.name: two tell-tales are called halved/],
    [
      'a tell-tale that is the right answer',
      { tellTales: tale({ expr: 'P / V' }), minWrong: 2 },
      /^tellTales\.0: doubled was usable in none of 200 draws/,
    ],
    [
      'a tell-tale that sometimes is',
      {
        tellTales: tale({ expr: 'min(2 * P, 3000) / V + 0 * P' }),
        inputs: { P: { label: 'p', unit: 'W', choices: [1000, 3000] } },
        minWrong: 2,
      },
      /^tellTales\.0: doubled drops out of some draws/,
    ],
    ['an unknown name under mayCoincide', { mayCoincide: ['nobody'] }, /^mayCoincide\.0: no tell-tale is called nobody/],
    [
      'a cautious mistake that is not always so',
      { tellTales: tale({ expr: '1000 / V' }), inputs: { P: { label: 'p', unit: 'W', choices: [100, 2000] } } },
      /^tellTales\.0\.direction: doubled is called safe-side/,
    ],
    ['a figure from memory', { constants: { V: { value: 230, unit: 'V', basis: 'memory' } } }, /^constants\.V: the figure is from memory/],
    ['a choice without a list', { answer: answerWith({ kind: 'choice' }) }, /^answer\.options: a choice needs the name of a constant/],
    [
      'a choice whose answer is not listed',
      {
        constants: { V: { value: 230, unit: 'V', basis: 'read' }, LIST: { value: [1, 2], unit: 'A', basis: 'read' } },
        answer: answerWith({ kind: 'choice', options: 'LIST' }),
        minWrong: 0,
        tellTales: [],
      },
      /^answer\.expr: some answers are not in the printed list/,
    ],
    [
      'a printed answer outside its window',
      {
        answer: answerWith({ round: { mode: 'up', dp: 0 }, accept: { belowRel: 0, aboveRel: 0.01, belowAbs: 0, aboveAbs: 0, sigFigs: 0 } }),
      },
      /^answer\.round: some answers, printed so, lie outside/,
    ],
    [
      'a family of no region',
      { regions: { uk: { available: false }, eu: { available: false }, na: { available: false } } },
      /^regions: the family is offered in no region/,
    ],
  ])('finds %s', (_what, changes, expected) => {
    expect(faultsOf(changes)).toContainEqual(expect.stringMatching(expected));
  });

  it('names the place in the region that changed it', () => {
    const regions = { uk: { available: true }, eu: { available: true, override: { answer: { expr: 'P / Q' } } }, na: { available: false } };
    expect(faultsOf({ regions })).toEqual(['regions.eu.override.answer.expr: column 5: nothing is called Q']);
  });

  it('says a fault of the base once, though three regions have it', () => {
    const regions = { uk: { available: true }, eu: { available: true }, na: { available: true } };
    expect(faultsOf({ steps: ['{W}'], regions })).toHaveLength(1);
  });
});

describe('the calculation that a family names', () => {
  const calculator = { id: 'current-from-power', inputs: { power: 'P', voltage: 'V' }, output: 'current' };
  const faults = (changes: object): string[] =>
    checkFamily(inventedFamily({ calculator: { ...calculator, ...changes } })).map(({ path, message }) => `${path.join('.')}: ${message}`);

  it('is held against the answer', () => {
    expect(faults({})).toEqual([]);
    // A watt taken for a kilowatt: the kinds of quantity fit, the size does not.
    expect(faults({ inputs: { power: '1000 * P', voltage: 'V' } })).toEqual([
      expect.stringMatching(/^calculator: current-from-power (gives|refuses)/),
    ]);
  });

  it.each([
    ['a calculation there is not', { id: 'current-from-nothing' }, /^calculator\.id: there is no calculation/],
    ['an input there is not', { inputs: { power: 'P', volts: 'V' } }, /^calculator\.inputs\.volts: current-from-power takes no volts/],
    ['an input left out', { inputs: { voltage: 'V' } }, /^calculator\.inputs: current-from-power also needs power/],
    ['a result there is not', { output: 'ohms' }, /^calculator\.output: current-from-power gives no ohms/],
    ['a name there is not', { inputs: { power: 'Q', voltage: 'V' } }, /^calculator\.inputs\.power: column 1: nothing is called Q/],
  ])('finds %s', (_what, changes, fault) => {
    expect(faults(changes)).toContainEqual(expect.stringMatching(fault));
  });

  it('comes with the draw, its numbers put in', () => {
    const drawn = draw(inventedCompiled({ calculator }), 1);
    expect(drawn.calculator).toEqual({
      id: 'current-from-power',
      title: 'Current from power and voltage',
      inputs: { power: drawn.inputs.P?.value, voltage: 230 },
    });
  });
});

describe('the safety maths in a formula', () => {
  it('are called by their names, in the region of the family, and checked for units', () => {
    const family = (expr: string) => inventedFamily({ answer: answerWith({ expr }) });
    expect(checkFamily(family('currentFromPower(P)'))).toEqual([]);
    expect(draw(inventedCompiled({ answer: answerWith({ expr: 'currentFromPower(P)' }) }), 1).key.value).toBeCloseTo(
      draw(inventedCompiled(), 1).key.value,
      9,
    );
    expect(checkFamily(family('currentFromPower(V)')).map(({ message }) => message)).toContainEqual(
      expect.stringMatching(/currentFromPower needs a power here, and this is a voltage/),
    );
  });
});

describe('a family made to be slow', () => {
  const long = `${'P * '.repeat(99)}P`;
  const lists = Array.from({ length: 10 }, () => 'nextUp(P, LIST)').join(' + ');
  const heavy = {
    constants: {
      V: { value: 230, unit: 'V', basis: 'read' },
      LIST: { value: Array.from({ length: 40 }, (_, i) => i * 100), unit: 'W', basis: 'read' },
    },
    derived: Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`D${i}`, i % 2 === 0 ? long : lists])),
    constraints: Array.from({ length: 8 }, (_, i) => (i === 7 ? 'P < 0' : 'P > 0')),
  };

  it('is refused, and in less than a second even on a busy machine', () => {
    const family = inventedFamily({ ...heavy, regions: { uk: { available: true }, eu: { available: true }, na: { available: true } } });
    const start = performance.now();
    expect(checkFamily(family).some(({ path }) => path[0] === 'constraints')).toBe(true);
    expect(performance.now() - start).toBeLessThan(1000);
  });
});

describe('whatever texts a family holds', () => {
  const word = fc.oneof(
    fc.constantFrom('P', 'V', 'P / V', '{P}', '{answer}', 'LIST', '__proto__', 'P <= V', '1 / 0', 'pow(P, 99)', '{', '0'),
    fc.string({ minLength: 1, maxLength: 30 }),
  );

  it('is checked without an exception', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        word,
        word,
        word,
        fc.array(word, { maxLength: 3 }),
        fc.record({ A: word, B: word }),
        (expr, story, step, constraints, derived) => {
          const parsed = familySchema.safeParse(
            invented({ answer: answerWith({ expr }), stories: [story], steps: [step], constraints, derived }),
          );
          if (!parsed.success) return;
          looked += 1;
          for (const { path, message } of checkFamily(parsed.data)) {
            expect(path.length).toBeGreaterThan(0);
            expect(message).not.toBe('');
          }
        },
      ),
      { seed: 20261125, numRuns: 100 },
    );
    expect(looked).toBeGreaterThan(30);
  });
});
