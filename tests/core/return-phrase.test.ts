import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RungwiseError } from '../../src/core/errors.js';
import { makePhrase, phraseBits, phraseLength, phraseWords, readPhrase } from '../../src/core/return-phrase.js';

const fixed = { seed: 20_261_125, numRuns: 300 };
const positions = fc.array(fc.nat(1023), { minLength: 7, maxLength: 7 });
const phrases = positions.map((places) => places.map((place) => phraseWords[place] as string));
const spread = ['banana', 'ladder', 'yellow', 'window', 'kitten', 'orchid'];

/** Edits between two texts: Levenshtein by the textbook table, with neighbours exchanged as one edit where `swaps` is set. */
function edits(a: string, b: string, swaps: boolean): number {
  const table = Array.from({ length: a.length + 1 }, (_, i) =>
    Array.from({ length: b.length + 1 }, (_, j) => (i === 0 ? j : j === 0 ? i : 0)),
  );
  const at = (i: number, j: number): number => table[i]?.[j] as number;
  for (let i = 1; i <= a.length; i += 1) {
    for (let j = 1; j <= b.length; j += 1) {
      let least = Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1));
      if (swaps && i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, at(i - 2, j - 2) + 1);
      (table[i] as number[])[j] = least;
    }
  }
  return at(a.length, b.length);
}

function messageOf(text: string): string {
  const reading = readPhrase(text);
  return reading.understood ? `understood: ${reading.canonical}` : reading.message;
}

describe('the edit counter of these tests', () => {
  // Worked by hand: k/s, e/i and the added g; two letters exchanged are two edits without swaps and one with.
  it('counts as the textbook does', () => {
    expect(edits('kitten', 'sitting', false)).toBe(3);
    expect(edits('trial', 'trail', false)).toBe(2);
    expect(edits('trial', 'trail', true)).toBe(1);
  });
});

describe('the list of words', () => {
  it('has 1,024 different words in alphabetical order', () => {
    expect(phraseWords).toHaveLength(1024);
    expect(new Set(phraseWords).size).toBe(1024);
    expect([...phraseWords].sort()).toEqual([...phraseWords]);
  });

  it('has words of three to seven letters, a to z only', () => {
    expect(phraseWords.filter((word) => !/^[a-z]{3,7}$/.test(word))).toEqual([]);
  });

  it('tells every word by its first four letters', () => {
    expect(new Set(phraseWords.map((word) => word.slice(0, 4))).size).toBe(1024);
    const short = phraseWords.filter((word) => word.length === 3);
    expect(short.length).toBeGreaterThan(0);
    expect(phraseWords.filter((word) => short.some((start) => word !== start && word.startsWith(start)))).toEqual([]);
  });

  it('has no two words one slip apart', () => {
    const close: string[] = [];
    phraseWords.forEach((a, i) => {
      for (const b of phraseWords.slice(i + 1)) {
        // A different length by two or more is two edits at least; the table is not needed.
        if (Math.abs(a.length - b.length) < 2 && edits(a, b, true) < 2) close.push(`${a} ${b}`);
      }
    });
    expect(close).toEqual([]);
  });

  it('has no plural beside its singular', () => {
    const all = new Set(phraseWords);
    const plurals = phraseWords.flatMap((word) =>
      [`${word}s`, `${word}es`, word.replace(/y$/, 'ies'), word.replace(/fe?$/, 'ves')].filter((p) => p !== word),
    );
    expect(plurals.filter((plural) => all.has(plural))).toEqual([]);
  });

  // Sets of English words that sound alike in the south of England, written down by hand.
  const alike = `air heir|aisle isle|alley ally|ant aunt|bail bale|ball bawl|bare bear|bass base|be bee|beach beech|bean been|berry bury|bite byte
    blew blue|board bored|bold bowled|bolder boulder|bough bow|boy buoy|brake break|bread bred|bridal bridle|caller collar|canvas canvass|cell sell
    caught court|cede seed|cedar seeder|ceiling sealing|cellar seller|cent scent sent|cereal serial|chilli chilly|choir quire|chord cord|comma calmer
    core corps|course coarse|creak creek|cue queue|currant current|cymbal symbol|dairy diary|days daze|dear deer|desert dessert|die dye|doe dough
    draft draught|ewe yew you|fair fare|father farther|feat feet|fir fur|flaw floor|flea flee|flour flower|for four fore|foul fowl|gait gate|gilt guilt
    grate great|grater greater|groan grown|guessed guest|hail hale|hair hare|hall haul|hangar hanger|heal heel|hear here|herd heard|hoarse horse
    hole whole|hour our|idle idol|jam jamb|kernel colonel|key quay|knead need|knight night|knot not|larva lava|lead led|leak leek|lesson lessen
    lie lye|loan lone|loot lute|made maid|mail male|main mane|maize maze|manner manor|mantel mantle|mare mayor|marshal martial|meat meet|medal meddle
    metal mettle|mews muse|mind mined|miner minor|missed mist|moat mote|moor more|morning mourning|muscle mussel|naval navel|nay neigh|none nun
    oar ore|one won|paced paste|pail pale|pain pane|pair pear|palate palette pallet|panda pander|passed past|patience patients|pause paws|pea pee|peace piece
    peak peek|peal peel|pearl purl|pedal peddle|peer pier|place plaice|plain plane|plum plumb|pole poll|pray prey|prince prints|principal principle
    profit prophet|quarts quartz|rain reign rein|raise rays|rap wrap|raw roar|read reed|read red|right write|ring wring|road rode|roll role|root route
    rose rows|rung wrung|sail sale|sauce source|saw sore|scene seen|sea see|seam seem|sew so|shake sheikh|shoe shoo|shore sure|side sighed|sight site
    slay sleigh|soar saw|sole soul|some sum|son sun|stair stare|stake steak|stalk stork|stationary stationery|steal steel|storey story|straight strait
    style stile|suite sweet|sundae sunday|swat swot|sword soared|tail tale|talk torque|taut taught|tea tee|team teem|tear tier|tenner tenor|their there
    threw through|throne thrown|thyme time|tide tied|tire tyre|toad towed|toe tow|tuba tuber|tuna tuner|vale veil|vain vein|vault volt|wade weighed
    wail whale|waist waste|wait weight|waiter weighter|wander wonder|war wore|ware wear where|watt what|wave waive|way weigh|weak week|weather whether
    weave we|weld welled|which witch|whine wine|wood would|yoke yolk`;

  it.each(alike.split('|').map((set) => set.trim().split(/\s+/)))('has at most one of the sound-alikes %s %s', (...set) => {
    expect(set.filter((word) => phraseWords.includes(word)).length).toBeLessThan(2);
  });

  it('has no spelling that Britain and America do differently', () => {
    const spellings = `aeroplane airplane aluminium armor armour artefact artifact ax axe behavior candor caliber calibre catalog center centre check cheque
      chili chilli cipher color colour cosy cozy curb cypher defence defense dialog disc disk donut doughnut draft draught enrol enroll favor favour fiber
      fibre flavor flavour furor gauge gage glamor gray grey harbor harbour honor honour hummus humor humour jeweler judgment kerb labor labour lasagna
      lasagne licence license liter litre luster lustre maneuver meager metre meter mold mould mom mum neighbor odor odour omelet omelette pajama parlor parlour
      plough plow practice practise program programme pyjama rumor rumour saber sabre savor savoury sceptic skeptic sled smolder specter story storey sulfur
      sulphur theater theatre tire tyre traveler tsar tumor vapor vapour vigor whiskey whisky woolen woollen yoghurt yogurt`;
    expect(spellings.split(/\s+/).filter((word) => phraseWords.includes(word))).toEqual([]);
  });

  it('has no word that dictation writes as a sign or a figure', () => {
    const signs = `zero nought one two three four five six seven eight nine ten eleven twelve twenty thirty forty fifty sixty eighty ninety hundred million
      first second third half quarter comma dot point dash hyphen slash colon period stop quote bracket space return line tab caps capital delete enter`;
    expect(signs.split(/\s+/).filter((word) => phraseWords.includes(word))).toEqual([]);
  });
});

describe('making a phrase', () => {
  it('takes the words that chance points at, seven out of all', () => {
    const places = [0, 1023, 512, 0, 1, 2, 1022];
    const asked: number[] = [];
    const phrase = makePhrase((below) => {
      asked.push(below);
      return places[asked.length - 1] as number;
    });
    expect(asked).toEqual(Array(7).fill(1024));
    expect(phrase).toEqual(places.map((place) => phraseWords[place]));
  });

  it('is worth 70 bits', () => {
    expect(phraseLength).toBe(7);
    expect(phraseBits).toBe(70);
    expect(phraseLength * Math.log2(phraseWords.length)).toBe(70);
  });

  it.each([1024, -1, 0.5, Number.NaN])('refuses chance that gives %d', (wrong) => {
    expect(() => makePhrase(() => wrong)).toThrow(RungwiseError);
  });
});

describe('reading a phrase', () => {
  const canonical = 'apple banana ladder yellow window kitten orchid';

  it.each([
    ['as it stands', 'apple banana ladder yellow window kitten orchid'],
    ['in capitals', 'APPLE Banana LADDER Yellow winDOW Kitten ORCHID'],
    ['with hyphens', 'apple-banana-ladder-yellow-window-kitten-orchid'],
    ['with commas and a full stop', 'Apple, banana, ladder, yellow, window, kitten, orchid.'],
    ['numbered, on lines', '1. apple\n2. banana\r\n3. ladder\n4. yellow\n5. window\n6. kitten\n7. orchid\n'],
    ['numbered without spaces', '1)apple2)banana3)ladder4)yellow5)window6)kitten7)orchid'],
    ['with nothing but numbers between', '1apple2banana3ladder4yellow5window6kitten7orchid'],
    ['in curly quotation marks', '“apple” ‘banana’ «ladder» „yellow“ window’ kitten… – orchid'],
    ['with accents', 'àpplé bañana låddër ÿellow wïndow kıtten ørchid'],
    ['in full-width letters', 'ａｐｐｌｅ　ｂａｎａｎａ　ｌａｄｄｅｒ　ｙｅｌｌｏｗ　ｗｉｎｄｏｗ　ｋｉｔｔｅｎ　ｏｒｃｈｉｄ'],
    ['with invisible signs', '\ufeffap\u00adple\u00a0banana\u200bladder\tyellow\u2028window kit\u200dten orchid\u200f'],
    ['by first four letters', 'appl bana ladd yell wind kitt orch'],
    ['broken off later', 'appl banan ladde yello windo kitte orchi'],
    ['with a wrong letter each', 'apkle bamana ladper yelliw wondow kixten orchad'],
    ['with a missing letter each', 'pple banaa laddr yllow widow ktten orhid'],
    ['with a letter too many each', 'appple bananas laddder yelllow windoww kittten orrchid'],
    ['with neighbours exchanged', 'appel banaan laddre yellwo widnow kittne ocrhid'],
    ['with a figure for a letter', 'app1e bana6a ladder yel1ow wind0w kitten orch1d'],
    ['with a muddled end', 'applul bananoh laddurs yellough windough kittun orchedd'],
    ['with a letter astray', 'apple banana ladder x yellow window kitten orchi d'],
    ['with pictures between', 'apple🍎banana🍌ladder🪜yellow💛window🤫kitten🐈orchid🌸'],
  ])('understands it %s', (_how, text) => {
    expect(readPhrase(text)).toEqual({ understood: true, words: canonical.split(' '), canonical });
  });

  it('says which word is not in the list, where it stands, and that four letters are enough', () => {
    const message = messageOf('apple banana zzzzz yellow window kitten orchid');
    expect(message).toBe('Word 3, “zzzzz”, is not in the list. Look at your phrase again; the first four letters of a word are enough.');
  });

  it('says which words were meant perhaps when two are equally near', () => {
    // Which texts lie between two words is found by the textbook table above.
    const typed = 'abcdefghijklmnopqrstuvwxyz'
      .split('')
      .flatMap((letter) => ['bo?k', 'ca?e', 'la?e', 'mi?t', 'li?e'].map((hole) => hole.replace('?', letter)));
    const unclear = typed.filter(
      (word) =>
        !phraseWords.some((known) => known.startsWith(word)) && phraseWords.filter((known) => edits(known, word, true) === 1).length === 2,
    );
    expect(unclear.length).toBeGreaterThan(0);
    for (const word of unclear) {
      const [first, second] = phraseWords.filter((known) => edits(known, word, true) === 1);
      expect(messageOf([word, ...spread].join(' '))).toContain(
        `Word 1, “${word}”, is not in the list; it could be “${first}” or “${second}”.`,
      );
    }
  });

  it('names three words that are not in the list and counts the rest', () => {
    expect(messageOf('zzzzz qqqqq apple xxxxx vvvvv jjjjj ladder')).toMatch(
      /^Word 1, “zzzzz”, is not in the list\. Word 2, “qqqqq”, is not in the list\. Word 4, “xxxxx”, is not in the list\. 2 more are not in it either\./,
    );
  });

  it('cuts a long word at twenty letters', () => {
    expect(messageOf(`${'z'.repeat(21)} ${spread.join(' ')}`)).toContain(`Word 1, “${'z'.repeat(20)}…”, is not`);
    expect(messageOf(`${'z'.repeat(20)} ${spread.join(' ')}`)).toContain(`Word 1, “${'z'.repeat(20)}”, is not`);
  });

  it('says how many words were read when they are not seven', () => {
    expect(messageOf('apple')).toBe('1 word was read, and seven are needed.');
    expect(messageOf(spread.join(' '))).toBe('6 words were read, and seven are needed.');
    expect(messageOf(`apple ${spread.join(' ')} apple`)).toBe('8 words were read, and seven are needed.');
    expect(messageOf('apple zzzzz')).toMatch(/^Word 2, “zzzzz”, .* 2 words were read, and seven are needed\.$/);
  });

  it.each(['', '   ', '1234567', '?!', '\ud800', '🍎'])('says that no word was read in %j', (text) => {
    expect(messageOf(text)).toBe('No word was read. Type the seven words of your return phrase.');
  });

  it('does not take words run together for the first of them', () => {
    expect(messageOf('applebanana ladder yellow window kitten orchid')).toContain('Word 1, “applebanana”, is not in the list.');
  });

  it('does not take a longer word for a word of four letters that begins it', () => {
    expect(messageOf(`treess ${spread.join(' ')}`)).toContain('Word 1, “treess”, is not in the list.');
  });

  it('does not pass over an eighth word that is not in the list', () => {
    expect(messageOf(`apple ${spread.join(' ')} zzzzz`)).toMatch(
      /^Word 8, “zzzzz”, is not in the list\..* 8 words were read, and seven are needed\.$/,
    );
  });

  it('reads 400 characters and no more', () => {
    expect(readPhrase(canonical.padEnd(400)).understood).toBe(true);
    expect(messageOf(canonical.padEnd(401))).toBe(
      'That is too long to be a return phrase: up to 400 characters are read. Type only the seven words.',
    );
  });
});

describe('reading any phrase', () => {
  const separators = fc.constantFrom(
    ' ',
    '  ',
    '-',
    ', ',
    '. ',
    '\n',
    '\r\n',
    '\t',
    ' / ',
    '_',
    ' – ',
    '; ',
    '…',
    '\u00a0',
    '\u200b',
    ' 12 ',
    ' 3. ',
    '’ “',
  );
  const manner = fc.constantFrom<(word: string) => string>(
    (word) => word,
    (word) => word.toUpperCase(),
    (word) => word.charAt(0).toUpperCase() + word.slice(1),
    (word) => word.slice(0, 4),
    (word) => word.slice(0, 5),
    (word) => word.replace(/[aeiou]/g, (vowel) => `${vowel}\u0301`),
    (word) => word.replace(/o/g, 'ø').replace(/l/g, 'ł'),
    (word) => `“${word}”`,
    (word) => `${word.slice(0, 2)}\u00ad${word.slice(2)}`,
  );
  const messy = fc.array(fc.tuple(manner, separators), { minLength: 7, maxLength: 7 });

  it('gives back every phrase from messy typing', () => {
    fc.assert(
      fc.property(phrases, messy, fc.boolean(), (words, ways, numbered) => {
        const text = words.map((word, i) => `${numbered ? `${i + 1}. ` : ''}${ways[i]?.[0](word)}${ways[i]?.[1]}`).join('');
        expect(readPhrase(text)).toEqual({ understood: true, words, canonical: words.join(' ') });
      }),
      fixed,
    );
  });

  it('gives back what was made', () => {
    fc.assert(
      fc.property(positions, (places) => {
        const rest = [...places];
        const words = makePhrase(() => rest.shift() as number);
        expect(readPhrase(words.join(' '))).toEqual({ understood: true, words, canonical: words.join(' ') });
      }),
      fixed,
    );
  });

  it('tells every word of the list from all others, whole and by four letters', () => {
    for (const word of phraseWords) {
      const text = [word, word.slice(0, 4), ...spread.slice(1)].join(' ');
      expect(readPhrase(text)).toMatchObject({ understood: true, words: [word, word, ...spread.slice(1)] });
    }
  });

  const letter = fc.constantFrom(...'abcdefghijklmnopqrstuvwxyz');
  const slip = fc
    .tuple(fc.nat(1023), fc.constantFrom('wrong', 'missing', 'added', 'exchanged'), fc.nat(6), letter)
    .map(([place, kind, at, other]) => {
      const word = phraseWords[place] as string;
      const i = at % word.length;
      if (kind === 'wrong') return word.slice(0, i) + other + word.slice(i + 1);
      if (kind === 'missing') return word.slice(0, i) + word.slice(i + 1);
      if (kind === 'added') return word.slice(0, i) + other + word.slice(i);
      return (
        word.slice(0, i) +
        word
          .slice(i, i + 2)
          .split('')
          .reverse()
          .join('') +
        word.slice(i + 2)
      );
    });

  it('mends one slip where exactly one word is near, and never guesses between two', () => {
    let mended = 0;
    let unclear = 0;
    fc.assert(
      fc.property(slip, (typed) => {
        const begun = phraseWords.find((word) => word === typed || (typed.length >= 4 && word.startsWith(typed)));
        const near = phraseWords.filter((word) => edits(word, typed, true) === 1);
        const meant = begun ?? (near.length === 1 ? near[0] : undefined);
        const reading = readPhrase([typed, ...spread].join(' '));
        if (meant === undefined) unclear += 1;
        else mended += 1;
        expect(reading.understood).toBe(meant !== undefined);
        expect(reading.understood ? reading.words[0] : reading.message).toContain(
          meant ?? `Word 1, “${typed}”, is not in the list; it could be`,
        );
      }),
      fixed,
    );
    expect(mended).toBeGreaterThan(200);
    expect(unclear).toBeGreaterThan(0);
  });

  it('counts the words of a phrase that is too short or too long', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...phraseWords), { minLength: 2, maxLength: 20 }), (words) => {
        const reading = readPhrase(words.join(' '));
        if (words.length === 7) expect(reading.understood).toBe(true);
        else expect(reading).toEqual({ understood: false, message: `${words.length} words were read, and seven are needed.` });
      }),
      fixed,
    );
  });

  it('never throws, and always gives seven words of the list or a message', () => {
    const anything = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 450 }),
      fc.string({ maxLength: 450 }),
      fc.string({ unit: fc.constantFrom('\ud800', '\udc00', 'a', '1', ' ', '\ufdfa'), maxLength: 420 }),
    );
    fc.assert(
      fc.property(anything, (text) => {
        const reading = readPhrase(text);
        if (reading.understood) expect(reading.words.filter((word) => phraseWords.includes(word))).toHaveLength(7);
        else expect(reading.message).toMatch(/^.{20,400}$/u);
      }),
      fixed,
    );
  });

  it.each([
    ['many short words', 'zq '.repeat(133)],
    ['many words that are nearly right', 'bnana '.repeat(66)],
    ['one long word', 'z'.repeat(400)],
    ['letters and figures by turns', 'z1'.repeat(200)],
    ['signs that unfold into eighteen', '\ufdfa'.repeat(400)],
  ])('takes less than 50 ms for %s', (_what, text) => {
    const times = [1, 2, 3, 4, 5].map(() => {
      const before = performance.now();
      readPhrase(text);
      return performance.now() - before;
    });
    expect(Math.min(...times)).toBeLessThan(50);
  });
});
