import { regionIds } from '../core/syllabus.js';
import type { FieldPart, TitleField } from '../core/page-parts.js';
import { counted } from '../core/words.js';
import type { Person } from '../accounts/index.js';
import { field } from '../study/index.js';
import type { BlueprintsView, TopicSupply } from './blueprint-service.js';

/** Make-ups of papers of one's own: those there are, and a form for another. */

export interface BlueprintsPage {
  view: 'papers/blueprints';
  data: {
    csrf: string;
    own: { id: string; title: string; text: string; by: string }[];
    packs: { href: string; title: string; current: boolean }[];
    form: {
      pack: string;
      title: FieldPart;
      minutes: FieldPart;
      passMark: FieldPart;
      why: string | null;
      topics: { name: string; title: string; value: string; have: string }[];
    } | null;
    titleBlock: TitleField[];
  };
}

export interface BlueprintTyped {
  title: FieldPart;
  minutes: FieldPart;
  passMark: FieldPart;
  /** By topic, as typed. */
  shares: Readonly<Record<string, string>>;
  /** What is wrong with the shares, or with all of it. */
  why: string | null;
}

const plain = (value: string): FieldPart => ({ value, why: null });
export const emptyBlueprint: BlueprintTyped = { title: plain(''), minutes: plain('30'), passMark: plain(''), shares: {}, why: null };

export function blueprintsPage(view: BlueprintsView, person: Person, csrf: string, typed: BlueprintTyped): BlueprintsPage {
  return {
    view: 'papers/blueprints',
    data: {
      csrf,
      own: view.own.map(({ id, body, packTitle, madeBy }) => ({
        id: String(id),
        title: body.title,
        text: `${counted(body.questions, 'question')}, ${body.minutes} min, ${body.passMark} to pass (${packTitle})`,
        by: madeBy ?? 'somebody who has left',
      })),
      packs:
        view.packs.length < 2
          ? []
          : view.packs.map(({ slug, title }) => ({ href: `/class-papers/blueprints?pack=${slug}`, title, current: slug === view.pack })),
      form:
        view.pack === null
          ? null
          : {
              pack: view.pack,
              title: typed.title,
              minutes: typed.minutes,
              passMark: typed.passMark,
              why: typed.why,
              topics: view.topics.map((topic) => ({
                name: `share-${topic.topic}`,
                title: `${topic.topic} ${topic.title}`,
                value: typed.shares[topic.topic] ?? '',
                have: haveWords(topic),
              })),
            },
      titleBlock: [field('Tutor', person.displayName, 12, { name: true })],
    },
  };
}

const regionWords = { uk: 'UK', eu: 'Europe', na: 'North America' } as const;

/** "24 there", or region by region where they differ. */
function haveWords({ have }: TopicSupply): string {
  const counts = regionIds.map((region) => have[region]);
  if (new Set(counts).size === 1) return `${counts[0] ?? 0} questions`;
  return regionIds.map((region) => `${regionWords[region]} ${have[region]}`).join(', ');
}
