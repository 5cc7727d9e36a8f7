/**
 * What is held about somebody's account, classes and words: a statement for each kind. `$1` is the person's number. The names of the
 * columns are the field names of the file that people take away, and stay as they are. Another person's name stands here only where
 * it was said to this one: who signed, who answered, who made the slip.
 */

const answeredAlready = `query y JOIN question q ON q.id = y.question_id`;

export const accountStatements = {
  account: `SELECT p.id AS number, p.mark, p.display_name AS name, p.role, p.sign_in_name, p.region, p.time_zone, p.created_at, p.last_seen_at, p.keep_until,
      p.closed_at, p.slip_at, t.display_name AS slip_by, p.phrase_hash IS NOT NULL AS has_return_phrase, p.password_hash IS NOT NULL AS has_password,
      p.totp_secret IS NOT NULL AS has_second_factor, p.invitation_expires_at
    FROM person p LEFT JOIN person t ON t.id = p.slip_by WHERE p.id = $1`,

  sessions: `SELECT created_at AS since, last_seen_at AS last_used, expires_at, confirmed_at, shared FROM session WHERE person_id = $1 ORDER BY created_at, id_hash`,

  recovery_codes: 'SELECT used_at FROM recovery_code WHERE person_id = $1 ORDER BY used_at, code_hash',

  removal_notice: 'SELECT noticed_at, remove_on FROM removal_notice WHERE person_id = $1',

  classes: `SELECT c.name AS class, m.joined_at, m.extra_time, c.ended_at FROM class_member m JOIN study_class c ON c.id = m.class_id
    WHERE m.person_id = $1 ORDER BY m.joined_at, c.id`,

  sign_offs: `SELECT skill, body->>'title' AS title, body->'criteria' AS criteria, remarks, seen_on, signer_name AS signed_by, signed_at, withdrawn_at,
      withdrawn_by, reason
    FROM sign_off WHERE person_id = $1 ORDER BY signed_at, id`,

  queries: `SELECT q.code AS question, y.revision, y.seed, y.region, y.body, y.raised_at, y.answer, y.answered_at, t.display_name AS answered_by, y.seen_at
    FROM ${answeredAlready} LEFT JOIN person t ON t.id = y.answered_by WHERE y.person_id = $1 ORDER BY y.raised_at, y.id`,

  changes_about: `SELECT at, role AS by, what FROM staff_change WHERE to_jsonb($1::int) IN (about->'person', about->'member') ORDER BY at, id`,

  classes_taught: `SELECT c.name AS class, c.created_at, c.ended_at FROM class_tutor t JOIN study_class c ON c.id = t.class_id
    WHERE t.person_id = $1 ORDER BY c.id`,

  papers_set: `SELECT pa.title, c.name AS class, pa.made_at, pa.versions FROM paper pa JOIN study_class c ON c.id = pa.class_id
    WHERE pa.made_by = $1 ORDER BY pa.made_at, pa.id`,

  specifications: `SELECT body->>'title' AS title, made_at, retired FROM own_blueprint WHERE made_by = $1 ORDER BY made_at, id`,

  evenings_held: `SELECT v.title, c.name AS class, v.made_at, v.ended_at FROM evening v JOIN study_class c ON c.id = v.class_id
    WHERE v.made_by = $1 ORDER BY v.made_at, v.id`,

  signatures_given: `SELECT skill, body->>'title' AS title, seen_on, signed_at, signer_name AS as_name, withdrawn_at FROM sign_off
    WHERE signed_by = $1 ORDER BY signed_at, id`,

  queries_answered: `SELECT q.code AS question, y.answer, y.answered_at FROM ${answeredAlready} WHERE y.answered_by = $1 ORDER BY y.answered_at, y.id`,

  slips_made: 'SELECT slip_at AS made_at FROM person WHERE slip_by = $1 ORDER BY slip_at, id',

  uploads: `SELECT file_name, uploaded_at, result IS NOT NULL AS finished FROM pack_upload WHERE person_id = $1 ORDER BY uploaded_at, id`,

  changes_made: `SELECT at, role AS as_role, what, about - 'person' - 'member' AS about FROM staff_change WHERE person_id = $1 ORDER BY at, id`,
} as const;
