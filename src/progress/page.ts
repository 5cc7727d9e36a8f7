import type { Person } from '../accounts/index.js';
import { dayWords, whenWords } from '../core/calendar.js';
import { sharesOnScale } from '../core/charts/shares.js';
import type { Ladder, Rung } from '../core/progress/ladders.js';
import { surenessOf, type CertaintyRow, type Sureness } from '../core/progress/sureness.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import type { ProgressPage, RungPart } from './page-types.js';
import type { ProgressView } from './service.js';
import { timePart } from './time-part.js';
import { certaintyWords } from './words.js';

/** Where do I stand? Ladders first; then what fades, how well sure means sure, and the time it took. */

const states = { firm: 'firm', loose: 'loose', none: 'not yet' } as const;

/** How many of what fades are listed. */
const listed = 6;

export function progressPage(view: ProgressView, person: Person): ProgressPage {
  const { day, ladders, fading } = view;
  const rungs = ladders.flatMap((ladder) => ladder.rungs);
  const firm = count(rungs, 'firm');
  const fadingLeft = fading.length - listed;
  return {
    view: 'progress/progress',
    data: {
      headline: `${firm} of ${rungs.length} rungs firm`,
      lead: 'Each topic is a ladder and each rung an objective. Stand on what is firm, then take the next.',
      key: [
        { look: 'firm', text: 'firm: at least half of its questions met, and you would very likely know them tomorrow' },
        { look: 'loose', text: 'loose: partly met, or likely to slip, or you were sure of a wrong answer' },
        { look: 'none', text: 'not yet: none of its questions met' },
      ],
      ladders: laddersPart(ladders),
      fading: fading.slice(0, listed).map((each) => ({
        objective: each.objective,
        title: each.title,
        when: whenWords(each.day, day),
        questions: counted(each.questions, 'question'),
      })),
      fadingMore: fadingLeft > 0 ? `And ${fadingLeft} more within a week.` : null,
      ...sureness(view.certainty),
      ...timePart(view.time, day),
      titleBlock: [
        field('Candidate', person.displayName, 6, { name: true }),
        field('Rungs', `${firm} firm, ${count(rungs, 'loose')} loose, ${count(rungs, 'none')} not yet`, 6),
        field('A rung is firm', 'at 85 % chance of recall tomorrow', 6),
        field('As of', dayWords(day), 6),
      ],
    },
  };
}

const count = (rungs: readonly Rung[], footing: Rung['footing']): number => rungs.filter((rung) => rung.footing === footing).length;

/** The ladder one is on stands open: the first that is begun and not firm, or else the first that is not begun. */
function laddersPart(ladders: readonly Ladder[]): ProgressPage['data']['ladders'] {
  const begun = ladders.find(({ rungs }) => rungs.some(({ met }) => met > 0) && rungs.some(({ footing }) => footing !== 'firm'));
  const open = begun ?? ladders.find(({ rungs }) => rungs.some(({ footing }) => footing !== 'firm'));
  return ladders.map((ladder, index) => {
    const { rungs, title } = ladder;
    const next = rungs.find(({ footing }) => footing !== 'firm');
    return {
      id: `ladder-${index + 1}`,
      title,
      count: `${count(rungs, 'firm')} of ${rungs.length} firm`,
      open: ladder === open,
      rungs: [...rungs].reverse().map((rung) => rungPart(rung, rung === next)),
    };
  });
}

function rungPart({ objective, title, footing, met, of, surelyWrong }: Rung, next: boolean): RungPart {
  const sure = surelyWrong ? '; sure of a wrong answer here' : '';
  return { id: objective, title, look: footing, state: states[footing], met: `${met} of ${of} met${sure}`, next };
}

const surenessWords: Readonly<Record<Sureness, string>> = {
  'too-few': 'Too few answers yet that you were sure of: from 20 on, this says whether sure means sure.',
  under: 'You are surer than you are right. Before you press Sure, ask yourself what would make the answer wrong.',
  open: 'When you are sure you are mostly right, though not quite as often as nine times in ten.',
  well: 'When you say sure, you can rely on it.',
};

function sureness(rows: readonly CertaintyRow[]): Pick<ProgressPage['data'], 'sureness' | 'sureChart' | 'sureRows'> {
  const any = rows.some(({ answers }) => answers > 0);
  const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;
  return {
    sureness: surenessWords[surenessOf(rows)],
    sureChart: any
      ? sharesOnScale(
          rows.map(({ certainty, share }) => ({ label: certaintyWords[certainty], share })),
          'Share right by how sure you were, in per cent',
        )
      : null,
    sureRows: rows.map(({ certainty, answers, right, share }) => ({
      words: certaintyWords[certainty],
      answers: String(answers),
      right: String(right),
      share: share === null ? '' : `${percent(share.value)} (${percent(share.low)} to ${percent(share.high)})`,
    })),
  };
}
