-- AlterTable
ALTER TABLE "class_member" ADD COLUMN     "joined_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP;

-- AlterTable
ALTER TABLE "pack" ADD COLUMN     "skills" JSONB NOT NULL DEFAULT '[]';

-- AlterTable
ALTER TABLE "person" ADD COLUMN     "slip_at" TIMESTAMPTZ(3),
ADD COLUMN     "slip_by" INTEGER;

-- AlterTable
ALTER TABLE "study_class" ADD COLUMN     "ended_at" TIMESTAMPTZ(3),
ADD COLUMN     "join_code" TEXT,
ADD COLUMN     "join_until" TIMESTAMPTZ(3),
ADD COLUMN     "meets_at" TEXT,
ADD COLUMN     "meets_on" INTEGER,
ADD COLUMN     "paper" TEXT,
ADD COLUMN     "start_token" UUID,
ADD COLUMN     "time_zone" TEXT NOT NULL DEFAULT 'Europe/London';

-- CreateTable
CREATE TABLE "sign_off" (
    "id" UUID NOT NULL,
    "person_id" INTEGER NOT NULL,
    "skill" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "remarks" TEXT NOT NULL DEFAULT '',
    "seen_on" DATE NOT NULL,
    "signed_by" INTEGER,
    "signer_name" TEXT NOT NULL,
    "signed_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),
    "withdrawn_by" TEXT,
    "reason" TEXT,

    CONSTRAINT "sign_off_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "evening" (
    "id" UUID NOT NULL,
    "class_id" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "region" TEXT NOT NULL,
    "made_by" INTEGER,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "moved_at" TIMESTAMPTZ(3) NOT NULL,
    "place" INTEGER NOT NULL DEFAULT 0,
    "change" INTEGER NOT NULL DEFAULT 0,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "evening_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "evening_item" (
    "evening_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "question_id" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "seed" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "hands" INTEGER[],

    CONSTRAINT "evening_item_pkey" PRIMARY KEY ("evening_id","position")
);

-- CreateTable
CREATE TABLE "evening_answer" (
    "evening_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "person_id" INTEGER NOT NULL,
    "choice" TEXT NOT NULL,
    "saved_at" TIMESTAMPTZ(3) NOT NULL,
    "right" BOOLEAN,
    "token" UUID,

    CONSTRAINT "evening_answer_pkey" PRIMARY KEY ("evening_id","position","person_id")
);

-- CreateTable
CREATE TABLE "topic_day" (
    "day" INTEGER NOT NULL,
    "topic_id" INTEGER NOT NULL,
    "people" INTEGER NOT NULL,
    "mean" DOUBLE PRECISION NOT NULL,
    "lower" DOUBLE PRECISION NOT NULL,
    "middle" DOUBLE PRECISION NOT NULL,
    "upper" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "topic_day_pkey" PRIMARY KEY ("day","topic_id")
);

-- CreateIndex
CREATE INDEX "sign_off_person_id_idx" ON "sign_off"("person_id");

-- CreateIndex
CREATE INDEX "evening_class_id_idx" ON "evening"("class_id");

-- CreateIndex
CREATE UNIQUE INDEX "evening_answer_token_key" ON "evening_answer"("token");

-- CreateIndex
CREATE INDEX "evening_answer_person_id_idx" ON "evening_answer"("person_id");

-- CreateIndex
CREATE INDEX "class_member_person_id_idx" ON "class_member"("person_id");

-- CreateIndex
CREATE INDEX "class_tutor_person_id_idx" ON "class_tutor"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "study_class_join_code_key" ON "study_class"("join_code");

-- CreateIndex
CREATE UNIQUE INDEX "study_class_start_token_key" ON "study_class"("start_token");

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_slip_by_fkey" FOREIGN KEY ("slip_by") REFERENCES "person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_signed_by_fkey" FOREIGN KEY ("signed_by") REFERENCES "person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evening" ADD CONSTRAINT "evening_class_id_fkey" FOREIGN KEY ("class_id") REFERENCES "study_class"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evening" ADD CONSTRAINT "evening_made_by_fkey" FOREIGN KEY ("made_by") REFERENCES "person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evening_item" ADD CONSTRAINT "evening_item_evening_id_fkey" FOREIGN KEY ("evening_id") REFERENCES "evening"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evening_item" ADD CONSTRAINT "evening_item_question_id_fkey" FOREIGN KEY ("question_id") REFERENCES "question"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evening_answer" ADD CONSTRAINT "evening_answer_evening_id_position_fkey" FOREIGN KEY ("evening_id", "position") REFERENCES "evening_item"("evening_id", "position") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evening_answer" ADD CONSTRAINT "evening_answer_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "topic_day" ADD CONSTRAINT "topic_day_topic_id_fkey" FOREIGN KEY ("topic_id") REFERENCES "topic"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- By hand, below: what the schema cannot say.
ALTER TABLE "study_class" ADD CONSTRAINT "study_class_name_check" CHECK (char_length("name") BETWEEN 1 AND 60);
ALTER TABLE "study_class" ADD CONSTRAINT "study_class_meeting_check" CHECK (num_nulls("meets_on", "meets_at") IN (0, 2) AND "meets_on" BETWEEN 0 AND 6 AND "meets_at" ~ '^[0-2][0-9]:[0-5][0-9]$');
ALTER TABLE "study_class" ADD CONSTRAINT "study_class_join_check" CHECK (num_nulls("join_code", "join_until") IN (0, 2));
ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_withdrawn_check" CHECK (num_nulls("withdrawn_at", "withdrawn_by", "reason") IN (0, 3));
ALTER TABLE "evening" ADD CONSTRAINT "evening_region_check" CHECK ("region" IN ('uk', 'eu', 'na'));
ALTER TABLE "evening_item" ADD CONSTRAINT "evening_item_state_check" CHECK ("state" IN ('waiting', 'open', 'closed', 'shown'));
ALTER TABLE "evening_answer" ADD CONSTRAINT "evening_answer_choice_check" CHECK ("choice" ~ '^[A-F]$');
-- A choice is changed while its question is open, and no index holds it.
ALTER TABLE "evening_answer" SET (fillfactor = 70);
