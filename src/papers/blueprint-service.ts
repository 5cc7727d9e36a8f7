import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { regionIds, type Blueprint, type Region } from '../core/syllabus.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { QuestionsService } from '../questions/index.js';
import * as store from './blueprint-store.js';
import { shortWords, type PaperMaker } from './making.js';

/** Make-ups of papers that tutors write, beside those of the packs: so many questions from each topic, a time and a pass mark. */

export interface TopicSupply {
  topic: string;
  title: string;
  /** Questions that one letter answers, by region. */
  have: Readonly<Record<Region, number>>;
}

export interface BlueprintsView {
  own: store.OwnBlueprintRow[];
  packs: { slug: string; title: string }[];
  /** Of the pack that is looked at. */
  pack: string | null;
  topics: TopicSupply[];
}

export type BlueprintWish = Omit<Blueprint, 'id'>;

export type BlueprintsService = ReturnType<typeof blueprintsService>;

export function blueprintsService({
  db,
  clock,
  questions,
  maker,
}: {
  db: Db;
  clock: Clock;
  questions: QuestionsService;
  maker: PaperMaker;
}) {
  /** @param wanted the pack to look at; the first when there is no such pack */
  async function view(person: Person, wanted: string | null): Promise<BlueprintsView> {
    requirePermission(person, 'set-papers');
    const catalogue = await questions.catalogue();
    const packs = [...new Map(catalogue.map(({ slug, pack }) => [slug, pack]))].map(([slug, title]) => ({ slug, title }));
    const pack = packs.find(({ slug }) => slug === wanted)?.slug ?? packs[0]?.slug ?? null;
    return { own: await store.listOwn(db), packs, pack, topics: pack === null ? [] : await supplyOf(pack) };
  }

  async function supplyOf(pack: string): Promise<TopicSupply[]> {
    const catalogue = (await questions.catalogue()).filter(({ slug }) => slug === pack);
    const topics = new Map(catalogue.map(({ topic, topicTitle }) => [topic, topicTitle]));
    const pools = await Promise.all(regionIds.map(async (region) => [region, await maker.poolOf(pack, region)] as const));
    const count = (topic: string) =>
      Object.fromEntries(pools.map(([region, pool]) => [region, pool.filter((row) => row.topic === topic).length]));
    return [...topics].map(([topic, title]) => ({ topic, title, have: count(topic) as Record<Region, number> }));
  }

  /** @returns why it cannot be kept; null when it was */
  async function add(person: Person, pack: string, body: BlueprintWish): Promise<string | null> {
    requirePermission(person, 'set-papers');
    const packTitle = (await questions.catalogue()).find(({ slug }) => slug === pack)?.pack;
    if (packTitle === undefined) throw new RungwiseError('form-not-understood', 'no such pack');
    const lacking = await Promise.all(
      regionIds.map(async (region) => ({
        region,
        short: await maker.lacking({ pack, packTitle, blueprint: { ...body, id: 'own' } }, region),
      })),
    );
    const filled = lacking.filter(({ short }) => short.length === 0);
    const own = lacking.find(({ region }) => region === person.region);
    if (filled.length === 0 || (own !== undefined && own.short.length > 0))
      return `The pack cannot fill it. ${shortWords((own ?? lacking[0])?.short ?? [])}.`;
    await store.addOwn(db, { pack, body, madeBy: person.id, madeAt: clock.now() });
    questions.forget();
    return null;
  }

  async function retire(person: Person, id: number): Promise<void> {
    requirePermission(person, 'set-papers');
    await store.retireOwn(db, id);
    questions.forget();
  }

  return { view, add, retire };
}
