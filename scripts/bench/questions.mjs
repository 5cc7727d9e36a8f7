// What the page on bad questions costs: for a class, and for everybody by how many study here.
import { questionFiguresService } from '../../dist/src/analysis/index.js';

/** For everybody who has no answer yet, 40: of 400 questions 32 are met, and 8 of these once more, one day after another as in life. */
const addForty = `
  WITH asked AS (
    SELECT id, kind, current_revision, row_number() OVER (ORDER BY id) - 1 AS place FROM question WHERE 'uk' = ANY (regions) AND NOT retired ORDER BY id LIMIT 400
  ), met AS (
    SELECT p.id AS person_id, turn, (p.id * 7919 + turn % 32 * 31) % (SELECT count(*) FROM asked) AS place, random() AS luck
    FROM person p, generate_series(0, 39) AS turn
    WHERE p.role = 'candidate' AND NOT EXISTS (SELECT FROM answer a WHERE a.person_id = p.id)
  )
  INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", rating, day, answered_at,
    stability_after, difficulty_after, due_day_after, reps_after)
  SELECT gen_random_uuid(), person_id, id, current_revision, 1, 'uk', CASE WHEN kind IN ('single', 'place') THEN floor(luck * 4)::int::text ELSE 'x' END,
    'fairly', luck < 0.6, 3, $1, now() - interval '60 days' + turn * interval '1 day', 3, 5, $1, 1 + turn / 32
  FROM met JOIN asked USING (place) ORDER BY turn, person_id`;

/**
 * @param {(count: number, work: () => Promise<unknown>) => Promise<number>} median
 * @returns a function that fills up the record of answers and measures both lists, in milliseconds
 */
export function questionLists({ db, clock, questions, person, median }) {
  const figures = questionFiguresService({ db, clock, questions });
  return async function measure(client, classId, today) {
    await client.query(addForty, [today]);
    await client.query('VACUUM ANALYZE answer');
    await figures.list(person, classId, 'class');
    return {
      ofClass: await median(9, () => figures.list(person, classId, 'class')),
      ofAll: await median(5, () => figures.list(person, classId, 'all')),
    };
  };
}
