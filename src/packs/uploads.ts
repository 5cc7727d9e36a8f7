import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import type { Pack } from '../core/pack.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { examineArchive } from './examine.js';
import type { PackPlan } from './plan.js';
import type { ReadApart } from './read-apart.js';
import type { LoadResult, PacksService } from './service.js';
import * as store from './upload-store.js';

/** Packs that tutors send: checked, shown with what they would change, and added once somebody confirms. */

export interface Upload {
  id: string;
  fileName: string;
  byName: string;
  uploadedAt: Date;
  report: ReadApart;
  /** What adding it would change now; null when it has errors, or was added. */
  plan: PackPlan | null;
  /** Set when its id belongs to a pack that comes with the server. */
  takesServerPack: boolean;
  result: LoadResult | null;
}

/** How long an upload waits for somebody to confirm it. */
const waitMilliseconds = 86_400_000;

export type UploadsService = ReturnType<typeof uploadsService>;

/** @param needs.forget called when a pack was added, so that nothing of the old one is shown from memory */
export function uploadsService({ db, clock, packs, forget }: { db: Db; clock: Clock; packs: PacksService; forget: () => void }) {
  /** One archive at a time is unpacked and checked, since each may take seconds of a whole processor. */
  let busy: Promise<unknown> = Promise.resolve();

  async function upload(person: Person, id: string, fileName: string, bytes: Buffer): Promise<void> {
    requirePermission(person, 'keep-packs');
    const mine = busy.then(() => examineArchive(bytes));
    busy = mine.catch(() => undefined);
    const { report, pack } = await mine;
    const now = clock.now();
    await store.addUpload(db, { id, personId: person.id, fileName, report, pack, now, oldest: new Date(now.getTime() - waitMilliseconds) });
  }

  async function find(person: Person, id: string): Promise<Upload> {
    requirePermission(person, 'keep-packs');
    const row = await store.findUpload(db, id);
    if (row === null) throw new RungwiseError('not-found');
    return await whole(row, packs);
  }

  /** Throws it away, unless it was added. */
  async function drop(person: Person, id: string): Promise<void> {
    requirePermission(person, 'keep-packs');
    await store.dropUpload(db, id);
  }

  /** Adds it, once: sent again, the first result stands. */
  async function confirm(person: Person, id: string): Promise<void> {
    const { plan, takesServerPack } = await find(person, id);
    if (plan === null || plan.state === 'refused' || takesServerPack) return;
    const row = await store.findUpload(db, id);
    const result = await packs.load(packIn(row) as Pack, 'added');
    if (result.state === 'refused') return;
    await store.setResult(db, id, result);
    forget();
  }

  async function list(person: Person) {
    requirePermission(person, 'keep-packs');
    const since = new Date(clock.now().getTime() - waitMilliseconds);
    return { packs: await store.listPacks(db), waiting: await store.waitingUploads(db, since) };
  }

  return { upload, find, drop, confirm, list };
}

/** With what adding it would change now, unless it has errors or was added. */
async function whole(row: store.UploadRow, packs: PacksService): Promise<Upload> {
  const pack = packIn(row);
  const result = row.result as LoadResult | null;
  return {
    ...row,
    report: row.report as ReadApart,
    plan: pack === null || result !== null ? null : await packs.plan(pack),
    takesServerPack: pack !== null && result === null && (await packs.comesWithServer(pack.head.id)),
    result,
  };
}

/** A pack that was sent before packs had skills has none. */
function packIn(row: store.UploadRow | null): Pack | null {
  const pack = (row?.pack ?? null) as (Omit<Pack, 'skills'> & Partial<Pack>) | null;
  return pack && { ...pack, skills: pack.skills ?? [] };
}
