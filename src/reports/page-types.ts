import type { ClassTab } from '../classes/index.js';
import type { TitleField } from '../core/page-parts.js';

/** Exact data of the reports. */

export interface ClassReportPage {
  view: 'reports/class';
  data: {
    tabs: ClassTab[];
    name: string;
    lead: string;
    csvHref: string;
    papers: string[];
    rows: { name: string; outlook: string; answers: string; firsts: string; seen: string; marks: string[]; skills: string; sure: string }[];
    teach: { title: string; text: string }[];
    mistakes: { code: string; stem: string; names: string }[];
    titleBlock: TitleField[];
  };
}

export interface OwnReportPage {
  view: 'reports/own';
  data: {
    name: string;
    outlook: string;
    topics: { title: string; rungs: string }[];
    papers: { title: string; day: string; mark: string }[];
    skills: { title: string; seen: string }[];
    sureness: { words: string; share: string }[];
    time: string;
    titleBlock: TitleField[];
  };
}
