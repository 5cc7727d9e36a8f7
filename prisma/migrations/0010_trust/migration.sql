-- AlterTable
ALTER TABLE "answer" DROP CONSTRAINT "answer_pkey",
ADD CONSTRAINT "answer_pkey" PRIMARY KEY ("person_id", "token");

-- AlterTable
ALTER TABLE "installation" ADD COLUMN     "keep_months" INTEGER NOT NULL DEFAULT 18,
ADD COLUMN     "mark" UUID NOT NULL DEFAULT gen_random_uuid(),
ADD COLUMN     "contact" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "second_factor_for_all" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "person" ADD COLUMN     "closed_at" TIMESTAMPTZ(3),
ADD COLUMN     "keep_until" DATE,
ADD COLUMN     "mark" UUID NOT NULL DEFAULT gen_random_uuid(),
ADD COLUMN     "totp_secret" BYTEA,
ADD COLUMN     "totp_step" INTEGER;

-- AlterTable
ALTER TABLE "session" ADD COLUMN     "confirmed_at" TIMESTAMPTZ(3),
ADD COLUMN     "shared" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "recovery_code" (
    "person_id" INTEGER NOT NULL,
    "code_hash" BYTEA NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "recovery_code_pkey" PRIMARY KEY ("person_id","code_hash")
);

-- CreateTable
CREATE TABLE "staff_change" (
    "id" SERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "person_id" INTEGER,
    "role" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "about" JSONB NOT NULL DEFAULT '{}',

    CONSTRAINT "staff_change_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "removed_person" (
    "mark" UUID NOT NULL,
    "removed_at" TIMESTAMPTZ(3) NOT NULL,
    "why" TEXT NOT NULL,

    CONSTRAINT "removed_person_pkey" PRIMARY KEY ("mark")
);

-- CreateTable
CREATE TABLE "removal_notice" (
    "person_id" INTEGER NOT NULL,
    "noticed_at" TIMESTAMPTZ(3) NOT NULL,
    "remove_on" DATE NOT NULL,

    CONSTRAINT "removal_notice_pkey" PRIMARY KEY ("person_id")
);

-- CreateTable
CREATE TABLE "job_run" (
    "job" TEXT NOT NULL,
    "slot" TIMESTAMPTZ(3) NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "beat_at" TIMESTAMPTZ(3) NOT NULL,
    "finished_at" TIMESTAMPTZ(3),
    "outcome" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "server" TEXT NOT NULL,

    CONSTRAINT "job_run_pkey" PRIMARY KEY ("job","slot")
);

-- CreateIndex
CREATE INDEX "staff_change_at_idx" ON "staff_change"("at");

-- CreateIndex
CREATE UNIQUE INDEX "person_mark_key" ON "person"("mark");

-- AddForeignKey
ALTER TABLE "recovery_code" ADD CONSTRAINT "recovery_code_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "removal_notice" ADD CONSTRAINT "removal_notice_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- By hand, below: what the schema cannot say.
ALTER TABLE "installation" ADD CONSTRAINT "installation_keep_check" CHECK ("keep_months" BETWEEN 6 AND 36);
ALTER TABLE "installation" ADD CONSTRAINT "installation_contact_check" CHECK (char_length("contact") <= 160);
ALTER TABLE "staff_change" ADD CONSTRAINT "staff_change_role_check" CHECK ("role" IN ('tutor', 'administrator', 'command', 'job'));
ALTER TABLE "removed_person" ADD CONSTRAINT "removed_person_why_check" CHECK ("why" IN ('self', 'staff', 'time'));
ALTER TABLE "job_run" ADD CONSTRAINT "job_run_outcome_check" CHECK (num_nulls("finished_at", "outcome") IN (0, 2) AND "outcome" IN ('done', 'failed'));

-- The list of what staff changed only grows, whoever asks.
CREATE FUNCTION staff_changes_are_kept() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the list of what staff changed is only added to';
END $$;
CREATE TRIGGER staff_change_kept BEFORE UPDATE OR DELETE OR TRUNCATE ON "staff_change" FOR EACH STATEMENT EXECUTE FUNCTION staff_changes_are_kept();
