import type { FieldPart, TitleField } from '../core/page-parts.js';

/** What the page of the plan shows, exactly. */
export interface PlanPage {
  view: 'plan/plan';
  data: {
    csrf: string;
    headline: string;
    lead: string;
    /** Said after saving. */
    saved: boolean;
    exam: FieldPart;
    minutes: FieldPart;
    daysOff: FieldPart;
    weekdays: { value: string; name: string; off: boolean }[];
    papers: { value: string; text: string; chosen: boolean }[];
    /** SVG made by the core. */
    chart: string;
    days: { iso: string; day: string; fresh: string; again: string; minutes: string }[];
    calendarHref: string | null;
    titleBlock: TitleField[];
  };
}
