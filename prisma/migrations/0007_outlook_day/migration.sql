-- CreateTable
CREATE TABLE "outlook_day" (
    "person_id" INTEGER NOT NULL,
    "day" INTEGER NOT NULL,
    "for_day" INTEGER NOT NULL,
    "paper" TEXT NOT NULL,
    "low" DOUBLE PRECISION NOT NULL,
    "high" DOUBLE PRECISION NOT NULL,
    "met" INTEGER NOT NULL,

    CONSTRAINT "outlook_day_pkey" PRIMARY KEY ("person_id","day")
);

-- AddForeignKey
ALTER TABLE "outlook_day" ADD CONSTRAINT "outlook_day_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;
