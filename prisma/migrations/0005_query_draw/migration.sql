-- AlterTable
ALTER TABLE "query" ADD COLUMN     "region" TEXT,
ADD COLUMN     "seed" INTEGER;
