/** What a drawing may be made of. Everything else is refused by name, so nothing in an SVG file can run, fetch or restyle the page. */

export const drawingLimits = {
  bytes: 60_000,
  elements: 1_500,
  depth: 12,
  /** Sides of the view box. */
  smallest: 100,
  largest: 1_000,
  lettersOfText: 120,
  parts: 40,
} as const;

export const elements: ReadonlySet<string> = new Set('g path line polyline polygon rect circle ellipse text tspan title desc'.split(' '));

/** How a shape or a word looks; the page's own style sheet gives each its ink, so that a drawing fits light, dark and paper. */
export const looks: ReadonlySet<string> = new Set(
  // Lines: thin, thick, dash. Areas: solid (ink), paper (covers what lies behind), tint. Words: name, strong, small, middle, end.
  'thin thick dash solid paper tint name strong small middle end'.split(' '),
);

const number = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?`;
const oneNumber = new RegExp(`^${number}$`, 'i');
const step = new RegExp(String.raw`^(?:translate|rotate|scale)\(\s*${number}(?:[\s,]+${number}){0,2}\s*\)`);

/** Of each attribute what it may hold, in words, and the test. */
const attributes: Readonly<Record<string, { is: string; fits: (value: string) => boolean }>> = {
  d: { is: 'a path of letters and numbers', fits: (value) => /^[MmLlHhVvCcSsQqTtAaZz\d\s.,+-]{1,6000}$/.test(value) },
  points: { is: 'pairs of numbers', fits: (value) => /^[\d\s.,+-]{1,6000}$/.test(value) },
  transform: { is: 'translate(…), rotate(…) or scale(…), at most four of them', fits: isTransform },
  class: { is: `out of ${[...looks].join(', ')}`, fits: (value) => value.split(/\s+/).every((word) => looks.has(word)) },
};
for (const name of 'x y x1 y1 x2 y2 cx cy r rx ry width height dx dy'.split(' '))
  (attributes as Record<string, unknown>)[name] = { is: 'a number', fits: (value: string) => value.length < 20 && oneNumber.test(value) };

function isTransform(value: string): boolean {
  if (value.length > 400) return false;
  let rest = value.trim();
  for (let count = 0; count < 4 && rest !== ''; count += 1) {
    const found = step.exec(rest);
    if (found === null) return false;
    rest = rest.slice(found[0].length).trim();
  }
  return rest === '';
}

/** Null when the attribute may stand there with this value; otherwise what is wrong. */
export function attributeFault(name: string, value: string): string | null {
  const rule = Object.hasOwn(attributes, name) ? attributes[name] : undefined;
  if (rule === undefined) return 'is not allowed in a drawing';
  return rule.fits(value) ? null : `must be ${rule.is}`;
}
