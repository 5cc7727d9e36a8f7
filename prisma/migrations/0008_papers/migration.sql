-- AlterTable
ALTER TABLE "class_member" ADD COLUMN     "extra_time" INTEGER NOT NULL DEFAULT 0;

-- CreateTable
CREATE TABLE "own_blueprint" (
    "id" SERIAL NOT NULL,
    "pack_id" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "made_by" INTEGER,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "retired" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "own_blueprint_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "paper" (
    "id" UUID NOT NULL,
    "pack_id" INTEGER NOT NULL,
    "pack_version" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "blueprint" JSONB NOT NULL,
    "region" TEXT NOT NULL,
    "seed" INTEGER NOT NULL,
    "made_by" INTEGER,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "class_id" INTEGER,
    "versions" INTEGER NOT NULL,
    "opens_at" TIMESTAMPTZ(3),
    "closes_at" TIMESTAMPTZ(3),

    CONSTRAINT "paper_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "paper_item" (
    "paper_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "question_id" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "seed" INTEGER NOT NULL,

    CONSTRAINT "paper_item_pkey" PRIMARY KEY ("paper_id","version","position")
);

-- CreateTable
CREATE TABLE "sitting" (
    "id" UUID NOT NULL,
    "paper_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "person_id" INTEGER,
    "guest_name" TEXT,
    "way" TEXT NOT NULL,
    "extra_time" INTEGER NOT NULL DEFAULT 0,
    "started_at" TIMESTAMPTZ(3),
    "deadline_at" TIMESTAMPTZ(3),
    "handed_in_at" TIMESTAMPTZ(3),
    "right" INTEGER,
    "passed" BOOLEAN,
    "chance_low" DOUBLE PRECISION,
    "chance_high" DOUBLE PRECISION,
    "first_right" INTEGER,
    "remarked_at" TIMESTAMPTZ(3),

    CONSTRAINT "sitting_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sitting_answer" (
    "sitting_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "choice" TEXT,
    "again" BOOLEAN NOT NULL DEFAULT false,
    "saved_at" TIMESTAMPTZ(3) NOT NULL,
    "right" BOOLEAN,
    "first_right" BOOLEAN,
    "token" UUID,

    CONSTRAINT "sitting_answer_pkey" PRIMARY KEY ("sitting_id","position")
);

-- CreateIndex
CREATE INDEX "paper_class_id_idx" ON "paper"("class_id");

-- CreateIndex
CREATE INDEX "sitting_person_id_idx" ON "sitting"("person_id");

-- CreateIndex
CREATE INDEX "sitting_deadline_at_idx" ON "sitting"("deadline_at");

-- CreateIndex
CREATE UNIQUE INDEX "sitting_paper_id_person_id_key" ON "sitting"("paper_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "sitting_paper_id_guest_name_key" ON "sitting"("paper_id", "guest_name");

-- CreateIndex
CREATE UNIQUE INDEX "sitting_answer_token_key" ON "sitting_answer"("token");

-- AddForeignKey
ALTER TABLE "own_blueprint" ADD CONSTRAINT "own_blueprint_pack_id_fkey" FOREIGN KEY ("pack_id") REFERENCES "pack"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "own_blueprint" ADD CONSTRAINT "own_blueprint_made_by_fkey" FOREIGN KEY ("made_by") REFERENCES "person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "paper" ADD CONSTRAINT "paper_pack_id_fkey" FOREIGN KEY ("pack_id") REFERENCES "pack"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "paper" ADD CONSTRAINT "paper_made_by_fkey" FOREIGN KEY ("made_by") REFERENCES "person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "paper" ADD CONSTRAINT "paper_class_id_fkey" FOREIGN KEY ("class_id") REFERENCES "study_class"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "paper_item" ADD CONSTRAINT "paper_item_paper_id_fkey" FOREIGN KEY ("paper_id") REFERENCES "paper"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "paper_item" ADD CONSTRAINT "paper_item_question_id_fkey" FOREIGN KEY ("question_id") REFERENCES "question"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sitting" ADD CONSTRAINT "sitting_paper_id_fkey" FOREIGN KEY ("paper_id") REFERENCES "paper"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sitting" ADD CONSTRAINT "sitting_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sitting_answer" ADD CONSTRAINT "sitting_answer_sitting_id_fkey" FOREIGN KEY ("sitting_id") REFERENCES "sitting"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- By hand, below: what the schema cannot say.
-- An answer on a paper says nothing of how sure its candidate was.
ALTER TABLE "answer" DROP CONSTRAINT "answer_certainty_check";
ALTER TABLE "answer" ADD CONSTRAINT "answer_certainty_check" CHECK ("certainty" IN ('sure', 'fairly', 'guessing', 'unsaid'));
ALTER TABLE "class_member" ADD CONSTRAINT "class_member_extra_time_check" CHECK ("extra_time" BETWEEN 0 AND 200);
ALTER TABLE "paper" ADD CONSTRAINT "paper_region_check" CHECK ("region" IN ('uk', 'eu', 'na'));
ALTER TABLE "paper" ADD CONSTRAINT "paper_versions_check" CHECK ("versions" BETWEEN 1 AND 60);
ALTER TABLE "paper" ADD CONSTRAINT "paper_window_check" CHECK ("opens_at" < "closes_at");
ALTER TABLE "sitting" ADD CONSTRAINT "sitting_way_check" CHECK ("way" IN ('screen', 'sheet'));
ALTER TABLE "sitting" ADD CONSTRAINT "sitting_whose_check" CHECK (num_nonnulls("person_id", "guest_name") = 1);
ALTER TABLE "sitting" ADD CONSTRAINT "sitting_extra_time_check" CHECK ("extra_time" BETWEEN 0 AND 200);
ALTER TABLE "sitting" ADD CONSTRAINT "sitting_marked_check" CHECK (num_nulls("right", "passed", "handed_in_at") IN (0, 3));
ALTER TABLE "sitting_answer" ADD CONSTRAINT "sitting_answer_choice_check" CHECK ("choice" ~ '^[A-F]$');
-- Choices are changed often and no index holds them: with room left in a page the new row stays beside the old one.
ALTER TABLE "sitting_answer" SET (fillfactor = 70);
