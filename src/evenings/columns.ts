/** What the queries about evenings ask for, and where it stands. */

export const headColumns = `e.id AS "eveningId", e.class_id AS "classId", c.name AS "className",
  (SELECT count(*)::int FROM class_member m WHERE m.class_id = e.class_id) AS members, e.title, e.region, e.made_at AS "madeAt", e.moved_at AS "movedAt",
  e.place, (SELECT count(*)::int FROM evening_item i WHERE i.evening_id = e.id) AS questions, e.change, e.ended_at AS "endedAt"`;
export const headTables = 'evening e JOIN study_class c ON c.id = e.class_id';

export const itemColumns = `i.position, i.question_id AS "questionId", i.revision, i.seed, i.state, i.hands`;

/** Of a choice, with the table called a. */
export const answerColumns = `a.position, a.choice, a."right", a.token`;
