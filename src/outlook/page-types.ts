import type { PractisePart, TitleField } from '../core/page-parts.js';

/** What the page of the outlook shows, exactly. */
export interface OutlookPage {
  view: 'outlook/outlook';
  data: {
    headline: string;
    lead: string;
    /** Said instead of figures while too few questions were met. */
    tooFew: boolean;
    /** SVG made by the core: the range on a scale; null without figures. */
    scale: string | null;
    range: string | null;
    /** If it were sat tomorrow, where the figures above are for another day. */
    tomorrow: string | null;
    topics: { topic: string; asked: string; right: string }[];
    /** What a low figure early on means; null later. */
    unmet: string | null;
    gains: { objective: string; title: string; minutes: string; practise: PractisePart }[];
    /** SVG made by the core; null for fewer than two days. */
    chart: string | null;
    history: { iso: string; day: string; low: string; high: string }[];
    titleBlock: TitleField[];
  };
}
