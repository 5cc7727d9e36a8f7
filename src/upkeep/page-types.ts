import type { TitleField } from '../core/page-parts.js';

/** Exact data of the administrator's pages. */

export interface UpkeepPage {
  view: 'upkeep/upkeep';
  data: {
    csrf: string;
    warnings: { what: string; todo: string }[];
    allWell: string | null;
    facts: { label: string; value: string }[];
    jobs: { name: string; last: string; outcome: string; note: string }[];
    backups: { name: string; size: string; at: string; href: string }[];
    backupLead: string;
    /** Null while nobody was removed. */
    removedHref: string | null;
    sealed: boolean;
    sameDisk: boolean;
    /** Why a backup could not be taken just now, with what to do. */
    why: string | null;
    taken: boolean;
    titleBlock: TitleField[];
  };
}

export interface ChangesPage {
  view: 'upkeep/changes';
  data: {
    changes: { at: string; who: string; what: string; about: string }[];
    olderHref: string | null;
    titleBlock: TitleField[];
  };
}
