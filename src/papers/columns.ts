/** What the queries about papers ask for, and where it stands. */

export const headColumns = `pa.id AS "paperId", pa.title, pk.slug AS pack, pk.title AS "packTitle", pa.pack_version AS "packVersion", pa.blueprint, pa.region,
  pa.made_by AS "madeBy", pa.made_at AS "madeAt", pa.class_id AS "classId", sc.name AS "className", pa.versions, pa.opens_at AS "opensAt", pa.closes_at AS "closesAt"`;
export const headTables = 'paper pa JOIN pack pk ON pk.id = pa.pack_id LEFT JOIN study_class sc ON sc.id = pa.class_id';

export const sittingColumns = `s.id AS "sittingId", s.version, s.person_id AS "personId", s.guest_name AS "guestName", s.way, s.extra_time AS "extraTime",
  s.started_at AS "startedAt", s.deadline_at AS "deadlineAt", s.handed_in_at AS "handedInAt", s."right", s.passed,
  s.chance_low AS "chanceLow", s.chance_high AS "chanceHigh", s.first_right AS "firstRight", s.remarked_at AS "remarkedAt"`;
