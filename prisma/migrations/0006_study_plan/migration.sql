-- CreateTable
CREATE TABLE "study_plan" (
    "person_id" INTEGER NOT NULL,
    "exam_day" INTEGER,
    "minutes" INTEGER NOT NULL,
    "weekdays_off" INTEGER[],
    "days_off" INTEGER[],
    "paper" TEXT,
    "calendar_key" INTEGER NOT NULL DEFAULT 1,
    "saved_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "study_plan_pkey" PRIMARY KEY ("person_id")
);

-- AddForeignKey
ALTER TABLE "study_plan" ADD CONSTRAINT "study_plan_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;
