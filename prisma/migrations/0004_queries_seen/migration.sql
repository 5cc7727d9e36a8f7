-- AlterTable
ALTER TABLE "query" ADD COLUMN     "seen_at" TIMESTAMPTZ(3);
