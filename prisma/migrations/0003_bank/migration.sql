-- AlterTable
ALTER TABLE "pack" ADD COLUMN     "blueprints" JSONB NOT NULL DEFAULT '[]',
ADD COLUMN     "origin" TEXT NOT NULL DEFAULT 'folder';

-- CreateTable
CREATE TABLE "pack_upload" (
    "id" UUID NOT NULL,
    "person_id" INTEGER NOT NULL,
    "file_name" TEXT NOT NULL,
    "report" JSONB NOT NULL,
    "pack" JSONB,
    "uploaded_at" TIMESTAMPTZ(3) NOT NULL,
    "result" JSONB,

    CONSTRAINT "pack_upload_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "query" (
    "id" UUID NOT NULL,
    "question_id" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "person_id" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    "raised_at" TIMESTAMPTZ(3) NOT NULL,
    "answer" TEXT,
    "answered_by" INTEGER,
    "answered_at" TIMESTAMPTZ(3),

    CONSTRAINT "query_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "query_question_id_idx" ON "query"("question_id");

-- CreateIndex
CREATE INDEX "query_person_id_idx" ON "query"("person_id");

-- AddForeignKey
ALTER TABLE "pack_upload" ADD CONSTRAINT "pack_upload_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "query" ADD CONSTRAINT "query_question_id_fkey" FOREIGN KEY ("question_id") REFERENCES "question"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "query" ADD CONSTRAINT "query_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "query" ADD CONSTRAINT "query_answered_by_fkey" FOREIGN KEY ("answered_by") REFERENCES "person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- Written by hand: what the schema language cannot say.

ALTER TABLE "pack" ADD CONSTRAINT "pack_origin_check" CHECK ("origin" IN ('folder', 'added'));
ALTER TABLE "query" ADD CONSTRAINT "query_body_check" CHECK (length("body") BETWEEN 1 AND 2000);
ALTER TABLE "query" ADD CONSTRAINT "query_answer_check" CHECK (length("answer") BETWEEN 1 AND 2000);
-- An answer is dated, and nothing else is.
ALTER TABLE "query" ADD CONSTRAINT "query_answered_check" CHECK (("answer" IS NULL) = ("answered_at" IS NULL));
