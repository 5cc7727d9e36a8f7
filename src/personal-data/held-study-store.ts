/** What is held about somebody's study: a statement for each kind, as in held-account-store.ts. Days are written as 2026-11-26. */

const dayOf = (column: string): string => `(DATE '1970-01-01' + ${column})::text`;
const daysOf = (column: string): string => `ARRAY(SELECT ${dayOf('d')} FROM unnest(${column}) AS d ORDER BY d)`;

// What the tutor of a class evening has not shown yet is not told here either.
const isShown = "(i.state = 'shown' OR v.ended_at IS NOT NULL)";

export const studyStatements = {
  plan: `SELECT ${dayOf('exam_day')} AS exam_day, minutes, weekdays_off, ${daysOf('days_off')} AS days_off, paper, calendar_key, saved_at
    FROM study_plan WHERE person_id = $1`,

  outlooks: `SELECT ${dayOf('day')} AS day, ${dayOf('for_day')} AS for_day, paper, low, high, met FROM outlook_day WHERE person_id = $1 ORDER BY outlook_day.day`,

  rounds: `SELECT r.id, r.started_at, ${dayOf('r.day')} AS day, r.minutes, r.region,
      (SELECT jsonb_agg(jsonb_build_object('question', q.code, 'revision', i.revision, 'seed', i.seed, 'id', i.token, 'retry_of', i.retry_of) ORDER BY i.position)
       FROM round_item i JOIN question q ON q.id = i.question_id WHERE i.round_id = r.id) AS questions
    FROM round r WHERE r.person_id = $1 ORDER BY r.started_at, r.id`,

  answers: `SELECT a.token AS id, a.answered_at, ${dayOf('a.day')} AS day, q.code AS question, q.kind, coalesce(r.body->>'stem', r.body->>'title', '') AS text,
      a.revision, a.seed, a.region, a.given, CASE WHEN q.kind = 'single' AND a.given ~ '^[0-9]$' THEN r.body->'options'->a.given::int->>'text' END AS chosen,
      a."right", a.score, a.certainty, a.tell_tale, a.rating, a.expected_recall, a.stability_before, a.difficulty_before,
      ${dayOf('a.last_day_before')} AS last_day_before, a.stability_after, a.difficulty_after, ${dayOf('a.due_day_after')} AS due_day_after, a.reps_after
    FROM answer a JOIN question q ON q.id = a.question_id
      LEFT JOIN question_revision r ON r.question_id = a.question_id AND r.revision = a.revision
    WHERE a.person_id = $1 AND NOT EXISTS (SELECT FROM evening_answer e JOIN evening_item i ON i.evening_id = e.evening_id AND i.position = e.position
      JOIN evening v ON v.id = e.evening_id WHERE e.person_id = $1 AND e.token = a.token AND NOT ${isShown})
    ORDER BY a.answered_at, a.token`,

  // Of a question that was never answered the row says nothing about the person.
  memories: `SELECT q.code AS question, m.stability, m.difficulty, ${dayOf('m.last_day')} AS last_day, ${dayOf('m.due_day')} AS due_day, m.reps,
      ${dayOf('m.retry_day')} AS retry_day, m.surely_wrong
    FROM memory m JOIN question q ON q.id = m.question_id WHERE m.person_id = $1 AND m.reps > 0 ORDER BY m.question_id`,

  papers_made: `SELECT id, title, made_at, pack_version, region, seed, versions, blueprint FROM paper WHERE made_by = $1 AND class_id IS NULL ORDER BY made_at, id`,

  sheets: `SELECT s.id, pa.title, c.name AS class, s.version, s.way, s.extra_time, s.started_at, s.deadline_at, s.handed_in_at, s."right", s.passed, s.chance_low,
      s.chance_high, s.first_right, s.remarked_at,
      (SELECT jsonb_agg(jsonb_build_object('place', x.position, 'question', q.code, 'choice', x.choice, 'again', x.again, 'saved_at', x.saved_at, 'right', x."right",
         'first_right', x.first_right, 'answer', CASE WHEN x."right" IS NOT NULL THEN x.token END) ORDER BY x.position)
       FROM sitting_answer x JOIN paper_item i ON i.paper_id = s.paper_id AND i.version = s.version AND i.position = x.position
         JOIN question q ON q.id = i.question_id WHERE x.sitting_id = s.id) AS answers
    FROM sitting s JOIN paper pa ON pa.id = s.paper_id LEFT JOIN study_class c ON c.id = pa.class_id
    WHERE s.person_id = $1 ORDER BY pa.made_at, s.id`,

  evenings: `SELECT v.title AS evening, c.name AS class, e.position AS place, q.code AS question, e.choice, e.saved_at, CASE WHEN ${isShown} THEN e."right" END AS "right"
    FROM evening_answer e JOIN evening v ON v.id = e.evening_id JOIN study_class c ON c.id = v.class_id
      JOIN evening_item i ON i.evening_id = e.evening_id AND i.position = e.position JOIN question q ON q.id = i.question_id
    WHERE e.person_id = $1 ORDER BY v.made_at, v.id, e.position`,
} as const;
