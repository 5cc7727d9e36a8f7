-- AlterTable
ALTER TABLE "question_revision" ADD COLUMN     "drawing_id" INTEGER;

-- AlterTable
ALTER TABLE "answer" ADD COLUMN     "score" DOUBLE PRECISION;

-- CreateTable
CREATE TABLE "drawing" (
    "id" SERIAL NOT NULL,
    "pack_id" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "content_hash" TEXT NOT NULL,
    "body" JSONB NOT NULL,

    CONSTRAINT "drawing_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "drawing_pack_id_code_content_hash_key" ON "drawing"("pack_id", "code", "content_hash");

-- AddForeignKey
ALTER TABLE "drawing" ADD CONSTRAINT "drawing_pack_id_fkey" FOREIGN KEY ("pack_id") REFERENCES "pack"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question_revision" ADD CONSTRAINT "question_revision_drawing_id_fkey" FOREIGN KEY ("drawing_id") REFERENCES "drawing"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- Written by hand: what the schema language cannot say.

ALTER TABLE "question" DROP CONSTRAINT "question_kind_check";
ALTER TABLE "question" ADD CONSTRAINT "question_kind_check" CHECK ("kind" IN ('single', 'several', 'order', 'pairs', 'place', 'numeric'));
ALTER TABLE "answer" ADD CONSTRAINT "answer_score_check" CHECK ("score" BETWEEN 0 AND 1);
