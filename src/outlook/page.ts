import type { Person } from '../accounts/index.js';
import { dayWords, isoDay } from '../core/calendar.js';
import { rangeOnScale, rangesOverDays } from '../core/charts/range.js';
import { counted } from '../core/words.js';
import { field } from '../study/index.js';
import type { OutlookPage } from './page-types.js';
import type { OutlookView } from './service.js';
import { percent, shownRange, tenths } from './words.js';

/** Will I pass? The value is never told alone: a sentence, a scale with its limits, and tables. */

export function outlookPage(view: OutlookView, person: Person, forms: { csrf: string; round: () => string }): OutlookPage {
  const { tomorrow, atExam, paper } = view;
  const outlook = atExam ?? tomorrow;
  const shown = outlook === null ? null : shownRange(outlook);
  return {
    view: 'outlook/outlook',
    data: {
      ...words(view),
      tooFew: shown === null,
      scale: shown === null ? null : rangeOnScale(shown.low, shown.high, `From ${percent(shown.low)} to ${percent(shown.high)}`),
      range: shown === null ? null : `Between ${percent(shown.low)} and ${percent(shown.high)}.`,
      tomorrow: atExam === null || tomorrow === null ? null : `If you sat it tomorrow: ${tenths(tomorrow)}.`,
      topics: (tomorrow?.topics ?? []).map(({ topic, asked, low, high }) => ({
        topic: view.topics.get(topic) ?? topic,
        asked: String(asked),
        right: `${low.toFixed(1)} to ${high.toFixed(1)}`,
      })),
      unmet: shown === null ? null : unmetWords(view),
      gains: view.gains.map(({ objective, title, minutes }) => ({
        objective,
        title,
        minutes: `about ${minutes} min`,
        practise: {
          csrf: forms.csrf,
          round: forms.round(),
          objective: `${paper?.pack ?? ''}/${objective}`,
          label: `Go over ${objective} now`,
        },
      })),
      ...historyOf(view),
      titleBlock: [
        field('Candidate', person.displayName, 6, { name: true }),
        field('Paper', paper === null ? 'none' : paper.blueprint.title, 6),
        field('Questions met', `${view.met}`, 6),
        field('As of', dayWords(view.day), 6),
      ],
    },
  };
}

function words({ tomorrow, atExam, paper, met, needed, examDay }: OutlookView): Pick<OutlookPage['data'], 'headline' | 'lead'> {
  if (paper === null)
    return {
      headline: 'No paper to look at',
      lead: 'None of the packs here has the make-up of a paper, so there is nothing to say of passing one.',
    };
  const shown = atExam ?? tomorrow;
  if (shown === null)
    return {
      headline: 'Too few answers yet',
      lead: `You have met ${counted(met, 'question')}. From ${needed} on, the outlook says how likely you are to pass.`,
    };
  const { questions, passMark } = paper.blueprint;
  const when =
    atExam === null || examDay === null ? 'if the paper were tomorrow' : `on ${dayWords(examDay, 'short')}, if you keep to your plan`;
  return {
    headline: 'Will I pass?',
    lead: `A paper of ${questions} questions with ${passMark} to pass, ${when}: of people who answer like you, ${tenths(shown)} would pass.`,
  };
}

/** Early on most of a paper is unmet, and the figure says little of what will be known in the end. */
function unmetWords({ met, of }: OutlookView): string | null {
  if (met >= of * 0.8) return null;
  return `You have met ${met} of ${of} questions so far. Those you have not met count by how often you are right at first sight, so this moves as you meet them.`;
}

function historyOf(view: OutlookView): Pick<OutlookPage['data'], 'chart' | 'history'> {
  const history = view.history.map((row) => ({ ...row, ...shownRange(row) }));
  const [first, last] = [history[0], history.at(-1)];
  const enough = first !== undefined && last !== undefined && first.day < last.day;
  return {
    chart: enough
      ? rangesOverDays(history, [dayWords(first.day, 'short'), dayWords(last.day, 'short')], 'The outlook on each day, in per cent')
      : null,
    history: enough
      ? history.map(({ day, low, high }) => ({ iso: isoDay(day), day: dayWords(day, 'short'), low: percent(low), high: percent(high) }))
      : [],
  };
}
