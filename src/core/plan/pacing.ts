/**
 * How many unseen questions a day gets. What is due must not crowd out what was never asked: in the scheduling study this one rule
 * made four fifths of the difference. The unseen are spread over the first half of the days that are left, with the last three free.
 */

/** Share of a day that the unseen may take at most, so that what was met is not starved in turn. */
const mostNew = 0.75;

/**
 * @param unseen questions never answered, today's new ones included
 * @param daysLeft days of study until the exam, today included; Infinity for no exam
 * @param capacity questions that fit into the day
 */
export function newQuota(unseen: number, daysLeft: number, capacity: number): number {
  if (unseen <= 0 || capacity <= 0) return 0;
  const cap = Math.max(1, Math.floor(capacity * mostNew));
  if (daysLeft === Infinity) return Math.min(unseen, Math.max(1, Math.floor(capacity * shareWithoutExam)));
  return Math.min(unseen, cap, Math.ceil(unseen / Math.max(1, Math.min(daysLeft - 3, Math.ceil(daysLeft / 2)))));
}

/** Without an exam nothing presses, and three in ten are new. */
const shareWithoutExam = 0.3;
