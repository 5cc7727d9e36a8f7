import { formatQuantity } from '../../shared/format.js';
import type { Outcome } from '../../shared/safety-maths/calculation.js';
import { circle, line, measure, metres, numberOf, path, text } from './drawing-parts.js';
import type { Drawing } from './page-types.js';

/** The antenna and people. */

/** An antenna and a person, with the distance between them. */
function people(distance: number, words: string, isLimit: boolean): Drawing {
  const out = measure(60, 270, 172, metres(distance));
  return {
    title: isLimit ? 'How far people must stay from the antenna' : 'The antenna and a person',
    description: `An antenna at the left, a person at the right, ${metres(distance)} away. ${words}`,
    caption: isLimit ? 'Not to scale. Dashed: nobody inside while transmitting, in the beam, above and below as well.' : 'Not to scale.',
    width: 330,
    height: 204,
    paths: [
      line('thk', [60, 150], [60, 40]),
      line('thk', [36, 40], [84, 40]),
      path('thn', 'M96 20a40 40 0 0 1 0 40M112 12a56 56 0 0 1 0 56'),
      ...(isLimit ? [path('dash', 'M270 8V158')] : []),
      circle('thk', 284, 72, 9),
      line('thk', [284, 82], [284, 116], [274, 150]),
      line('thk', [284, 116], [294, 150]),
      line('thk', [270, 96], [298, 96]),
      line('thk', [20, 150], [316, 150]),
      ...out.paths,
    ],
    texts: [text(180, 44, words), ...out.texts.map((each) => ({ ...each, y: 192 }))],
  };
}

export const limitDistance = (outcome: Outcome): Drawing | null => {
  const distance = numberOf(outcome, 'distance');
  return distance === null ? null : people(distance, 'keep out', true);
};

export const field =
  (name: string) =>
  (outcome: Outcome): Drawing | null => {
    const [distance, value] = [numberOf(outcome, 'distance'), numberOf(outcome, name)];
    return distance === null || value === null
      ? null
      : people(distance, formatQuantity(value, outcome.result[name]?.unit ?? '', { significant: 3 }), false);
  };
