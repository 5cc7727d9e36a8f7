import type { TitleField } from '../core/page-parts.js';

/** What the pages of progress show, exactly. */

export interface RungPart {
  id: string;
  title: string;
  /** Class of the rung, and the word for it. */
  look: 'firm' | 'loose' | 'none';
  state: string;
  met: string;
  next: boolean;
}

export interface ProgressPage {
  view: 'progress/progress';
  data: {
    headline: string;
    lead: string;
    /** What firm, loose and not yet mean. */
    key: { look: RungPart['look']; text: string }[];
    ladders: { id: string; title: string; count: string; open: boolean; rungs: RungPart[] }[];
    fading: { objective: string; title: string; when: string; questions: string }[];
    fadingMore: string | null;
    sureness: string;
    /** SVG made by the core; null while nothing was answered. */
    sureChart: string | null;
    sureRows: { words: string; answers: string; right: string; share: string }[];
    time: string;
    timeChart: string | null;
    timeRows: { week: string; minutes: string; answers: string }[];
    titleBlock: TitleField[];
  };
}

export interface AnswersPage {
  view: 'progress/answers';
  data: {
    text: string;
    shows: { value: string; text: string; chosen: boolean }[];
    found: string;
    days: { iso: string; title: string; answers: { href: string; code: string; stem: string; verdict: string; sure: string }[] }[];
    before: string | null;
    after: string | null;
    pageWords: string | null;
    titleBlock: TitleField[];
  };
}
