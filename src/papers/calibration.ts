import { dayWords } from '../core/calendar.js';
import { reliabilityChart } from '../core/charts/reliability.js';
import { calibrationOf, type Calibration, type Prediction } from '../core/outlook/calibration.js';
import { wilsonInterval } from '../core/outlook/wilson.js';
import type { TitleField } from '../core/page-parts.js';
import { counted } from '../core/words.js';
import { requirePermission, type Person } from '../accounts/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { field } from '../study/index.js';
import { dayOf } from './days.js';

/** How well the outlook foretells: what was told just before papers that were then sat, held against how they went. */

export interface CalibrationPage {
  view: 'papers/calibration';
  data: {
    headline: string;
    lead: string;
    /** SVG made by the core; null while there is too little to show. */
    chart: string | null;
    bins: { told: string; papers: number; passed: string; limits: string }[];
    figures: { name: string; value: string; meaning: string }[];
    titleBlock: TitleField[];
  };
}

/** Fewer say nothing: of 20, half of them passed, the share is known to about 20 points either way. */
const fewest = 20;
/** Enough for as many papers as a club has. */
const binCount = 5;

export type CalibrationService = ReturnType<typeof calibrationService>;

export function calibrationService({ db, clock }: { db: Db; clock: Clock }) {
  /** @returns a line for each paper that was sat with something told before it, of this tutor's classes, or of all for an administrator */
  async function view(person: Person): Promise<{ predictions: Prediction[]; now: Date }> {
    requirePermission(person, 'set-papers');
    const { rows } = await db.pool.query<Prediction>(
      `SELECT (s.chance_low + s.chance_high) / 2 AS chance, s.passed AS happened FROM sitting s
       WHERE s.handed_in_at IS NOT NULL AND s.chance_low IS NOT NULL AND ($1::int IS NULL OR EXISTS (
         SELECT FROM class_member m JOIN class_tutor t ON t.class_id = m.class_id WHERE m.person_id = s.person_id AND t.person_id = $1))`,
      [person.role === 'administrator' ? null : person.id],
    );
    return { predictions: rows, now: clock.now() };
  }
  return { view };
}

export function calibrationPage({ predictions, now }: { predictions: readonly Prediction[]; now: Date }, person: Person): CalibrationPage {
  const calibration = predictions.length < fewest ? null : calibrationOf(predictions, binCount);
  const points = (calibration?.bins ?? []).map(({ count, meanPredicted, meanHappened }) => {
    const limits = wilsonInterval(Math.round(count * meanHappened), count) ?? { low: 0, high: 1 };
    return { predicted: meanPredicted, happened: meanHappened, ...limits, count };
  });
  return {
    view: 'papers/calibration',
    data: {
      headline: 'Does the outlook foretell?',
      lead: calibration === null ? tooFewWords(predictions.length) : leadWords(calibration),
      chart: calibration === null ? null : reliabilityChart(points, 'Share of papers passed against what was told before, in per cent'),
      bins: points.map(({ predicted, happened, low, high, count }) => ({
        told: percent(predicted),
        papers: count,
        passed: percent(happened),
        limits: `${percent(low)} to ${percent(high)}`,
      })),
      figures: calibration === null ? [] : figures(calibration),
      titleBlock: [field('Papers counted', String(predictions.length), 6, { name: true }), field('As of', dayWords(dayOf(now, person)), 6)],
    },
  };
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function tooFewWords(count: number): string {
  const far = count === 0 ? 'No mock paper has' : `${counted(count, 'mock paper')} ${count === 1 ? 'has' : 'have'} so far`;
  return `${far} been sat by somebody whom the outlook told something. From ${fewest} on, you can compare here what was told with how it went.`;
}

function leadWords({ count, meanPredicted, meanHappened }: Calibration): string {
  const gap = Math.round((meanPredicted - meanHappened) * 100);
  const way =
    Math.abs(gap) < 5 ? 'about as many as were told' : gap > 0 ? `fewer than told, by ${gap} points` : `more than told, by ${-gap} points`;
  return `Before ${count} mock papers the outlook told ${percent(meanPredicted)} on average, and ${percent(meanHappened)} passed: ${way}.`;
}

const figures = ({ brier, logLoss, auc }: Calibration): CalibrationPage['data']['figures'] => [
  {
    name: 'Brier score',
    value: brier.toFixed(3),
    meaning: 'Mean square of what was told less what happened: 0 is perfect, 0.25 is what always telling 50 % gives.',
  },
  {
    name: 'Log loss',
    value: logLoss.toFixed(3),
    meaning: 'Punishes what was told as nearly certain and was not so: 0 is perfect, 0.693 is what always telling 50 % gives.',
  },
  {
    name: 'Order',
    value: auc === null ? 'not known' : auc.toFixed(2),
    meaning: 'How often, of one who passed and one who did not, the first had been told more: 1 is always, 0.5 is by chance.',
  },
];
