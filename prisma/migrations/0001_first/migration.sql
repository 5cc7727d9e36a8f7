-- CreateTable
CREATE TABLE "installation" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "cookie_secret" BYTEA NOT NULL,
    "phrase_salt" BYTEA NOT NULL,
    "set_up_token_hash" BYTEA,
    "set_up_token_expires_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "installation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person" (
    "id" SERIAL NOT NULL,
    "display_name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "sign_in_name" TEXT,
    "password_hash" TEXT,
    "phrase_hash" BYTEA,
    "start_token" UUID,
    "invitation_hash" BYTEA,
    "invitation_expires_at" TIMESTAMPTZ(3),
    "time_zone" TEXT NOT NULL,
    "region" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "last_seen_at" TIMESTAMPTZ(3),

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id_hash" BYTEA NOT NULL,
    "person_id" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id_hash")
);

-- CreateTable
CREATE TABLE "guess" (
    "key" BYTEA NOT NULL,
    "count" INTEGER NOT NULL,
    "window_start" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "guess_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "pack" (
    "id" SERIAL NOT NULL,
    "slug" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "version" TEXT NOT NULL,
    "licence" TEXT NOT NULL,
    "language" TEXT NOT NULL,
    "regions" TEXT[],
    "content_hash" TEXT NOT NULL,
    "cautions" JSONB NOT NULL,
    "sources" JSONB NOT NULL,
    "loaded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "pack_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "topic" (
    "id" SERIAL NOT NULL,
    "pack_id" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "blurb" TEXT NOT NULL,
    "position" INTEGER NOT NULL,

    CONSTRAINT "topic_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "objective" (
    "id" SERIAL NOT NULL,
    "topic_id" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "weight" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "body" JSONB NOT NULL,

    CONSTRAINT "objective_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "question" (
    "id" SERIAL NOT NULL,
    "pack_id" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "objective_id" INTEGER NOT NULL,
    "topic_id" INTEGER NOT NULL,
    "regions" TEXT[],
    "current_revision" INTEGER NOT NULL,
    "retired" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "question_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "question_revision" (
    "question_id" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "content_hash" TEXT NOT NULL,
    "loaded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "question_revision_pkey" PRIMARY KEY ("question_id","revision")
);

-- CreateTable
CREATE TABLE "memory" (
    "person_id" INTEGER NOT NULL,
    "question_id" INTEGER NOT NULL,
    "topic_id" INTEGER NOT NULL,
    "stability" DOUBLE PRECISION,
    "difficulty" DOUBLE PRECISION,
    "last_day" INTEGER,
    "due_day" INTEGER,
    "reps" INTEGER NOT NULL DEFAULT 0,
    "retry_day" INTEGER,
    "surely_wrong" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "memory_pkey" PRIMARY KEY ("person_id","question_id")
);

-- CreateTable
CREATE TABLE "round" (
    "id" UUID NOT NULL,
    "person_id" INTEGER NOT NULL,
    "minutes" INTEGER NOT NULL,
    "day" INTEGER NOT NULL,
    "region" TEXT NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "round_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "round_item" (
    "token" UUID NOT NULL,
    "round_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "question_id" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "seed" INTEGER NOT NULL,
    "retry_of" UUID,

    CONSTRAINT "round_item_pkey" PRIMARY KEY ("token")
);

-- CreateTable
CREATE TABLE "answer" (
    "token" UUID NOT NULL,
    "person_id" INTEGER NOT NULL,
    "question_id" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "seed" INTEGER NOT NULL,
    "region" TEXT NOT NULL,
    "given" TEXT NOT NULL,
    "certainty" TEXT NOT NULL,
    "right" BOOLEAN NOT NULL,
    "tell_tale" TEXT,
    "rating" INTEGER,
    "day" INTEGER NOT NULL,
    "answered_at" TIMESTAMPTZ(3) NOT NULL,
    "stability_before" DOUBLE PRECISION,
    "difficulty_before" DOUBLE PRECISION,
    "last_day_before" INTEGER,
    "expected_recall" DOUBLE PRECISION,
    "stability_after" DOUBLE PRECISION,
    "difficulty_after" DOUBLE PRECISION,
    "due_day_after" INTEGER,
    "reps_after" INTEGER NOT NULL,

    CONSTRAINT "answer_pkey" PRIMARY KEY ("token")
);

-- CreateTable
CREATE TABLE "study_class" (
    "id" SERIAL NOT NULL,
    "name" TEXT NOT NULL,
    "exam_on" DATE,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "study_class_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "class_tutor" (
    "class_id" INTEGER NOT NULL,
    "person_id" INTEGER NOT NULL,

    CONSTRAINT "class_tutor_pkey" PRIMARY KEY ("class_id","person_id")
);

-- CreateTable
CREATE TABLE "class_member" (
    "class_id" INTEGER NOT NULL,
    "person_id" INTEGER NOT NULL,

    CONSTRAINT "class_member_pkey" PRIMARY KEY ("class_id","person_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "person_sign_in_name_key" ON "person"("sign_in_name");

-- CreateIndex
CREATE UNIQUE INDEX "person_phrase_hash_key" ON "person"("phrase_hash");

-- CreateIndex
CREATE UNIQUE INDEX "person_start_token_key" ON "person"("start_token");

-- CreateIndex
CREATE UNIQUE INDEX "person_invitation_hash_key" ON "person"("invitation_hash");

-- CreateIndex
CREATE INDEX "session_person_id_idx" ON "session"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "pack_slug_key" ON "pack"("slug");

-- CreateIndex
CREATE UNIQUE INDEX "topic_pack_id_code_key" ON "topic"("pack_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "objective_topic_id_code_key" ON "objective"("topic_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "question_pack_id_code_key" ON "question"("pack_id", "code");

-- CreateIndex
CREATE INDEX "round_person_id_started_at_idx" ON "round"("person_id", "started_at");

-- CreateIndex
CREATE UNIQUE INDEX "round_item_retry_of_key" ON "round_item"("retry_of");

-- CreateIndex
CREATE UNIQUE INDEX "round_item_round_id_position_key" ON "round_item"("round_id", "position");

-- CreateIndex
CREATE INDEX "answer_person_id_answered_at_idx" ON "answer"("person_id", "answered_at");

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "topic" ADD CONSTRAINT "topic_pack_id_fkey" FOREIGN KEY ("pack_id") REFERENCES "pack"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "objective" ADD CONSTRAINT "objective_topic_id_fkey" FOREIGN KEY ("topic_id") REFERENCES "topic"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_pack_id_fkey" FOREIGN KEY ("pack_id") REFERENCES "pack"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_objective_id_fkey" FOREIGN KEY ("objective_id") REFERENCES "objective"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question_revision" ADD CONSTRAINT "question_revision_question_id_fkey" FOREIGN KEY ("question_id") REFERENCES "question"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "memory" ADD CONSTRAINT "memory_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "memory" ADD CONSTRAINT "memory_question_id_fkey" FOREIGN KEY ("question_id") REFERENCES "question"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round" ADD CONSTRAINT "round_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "round_item" ADD CONSTRAINT "round_item_round_id_fkey" FOREIGN KEY ("round_id") REFERENCES "round"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "answer" ADD CONSTRAINT "answer_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "class_tutor" ADD CONSTRAINT "class_tutor_class_id_fkey" FOREIGN KEY ("class_id") REFERENCES "study_class"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "class_tutor" ADD CONSTRAINT "class_tutor_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "class_member" ADD CONSTRAINT "class_member_class_id_fkey" FOREIGN KEY ("class_id") REFERENCES "study_class"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "class_member" ADD CONSTRAINT "class_member_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Written by hand: what the schema language cannot say.

-- What an answer changes stands in no index, and a page of memories has room left: updates stay in their page.
ALTER TABLE "memory" SET (fillfactor = 80);

-- The memory model refuses what lies outside these limits, so the table does too.
ALTER TABLE "memory" ADD CONSTRAINT "memory_stability_check" CHECK ("stability" BETWEEN 0.001 AND 36500);
ALTER TABLE "memory" ADD CONSTRAINT "memory_difficulty_check" CHECK ("difficulty" BETWEEN 1 AND 10);
ALTER TABLE "memory" ADD CONSTRAINT "memory_whole_check" CHECK (num_nulls("stability", "difficulty", "last_day", "due_day") IN (0, 4));
ALTER TABLE "memory" ADD CONSTRAINT "memory_reps_check" CHECK ("reps" >= 0);

ALTER TABLE "answer" ADD CONSTRAINT "answer_certainty_check" CHECK ("certainty" IN ('sure', 'fairly', 'guessing'));
ALTER TABLE "answer" ADD CONSTRAINT "answer_rating_check" CHECK ("rating" BETWEEN 1 AND 4);
ALTER TABLE "answer" ADD CONSTRAINT "answer_expected_recall_check" CHECK ("expected_recall" BETWEEN 0 AND 1);

ALTER TABLE "installation" ADD CONSTRAINT "installation_one_check" CHECK ("id" = 1);
ALTER TABLE "guess" ADD CONSTRAINT "guess_count_check" CHECK ("count" >= 0);
ALTER TABLE "person" ADD CONSTRAINT "person_role_check" CHECK ("role" IN ('candidate', 'tutor', 'administrator'));
ALTER TABLE "person" ADD CONSTRAINT "person_name_check" CHECK (length("display_name") BETWEEN 1 AND 200);
ALTER TABLE "person" ADD CONSTRAINT "person_region_check" CHECK ("region" IN ('uk', 'eu', 'na'));
ALTER TABLE "question" ADD CONSTRAINT "question_kind_check" CHECK ("kind" IN ('single', 'numeric'));

-- The record of answers is only ever added to; a person's answers go when the person does.
CREATE FUNCTION answers_are_kept() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'answers are never changed';
END
$$;
CREATE TRIGGER "answer_kept" BEFORE UPDATE ON "answer" FOR EACH ROW EXECUTE FUNCTION answers_are_kept();
