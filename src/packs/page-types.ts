import type { TitleField } from '../core/page-parts.js';

/** What each page about packs shows, exactly. */

export interface PacksPage {
  view: 'packs/list';
  data: {
    csrf: string;
    why: string | null;
    packs: { title: string; id: string; version: string; licence: string; counts: string; origin: string; loaded: string }[];
    /** Uploads that wait to be confirmed. */
    waiting: { href: string; name: string; by: string; when: string }[];
    titleBlock: TitleField[];
  };
}

export interface UploadPage {
  view: 'packs/upload';
  data: {
    csrf: string;
    fileName: string;
    headline: string;
    /** The sign of the plate above: what can be done with the pack. */
    look: 'yes' | 'no' | 'must';
    lead: string;
    /** Where the form to add it is sent; null when it cannot be added, or was. */
    confirm: string | null;
    confirmLabel: string;
    /** Where the form to throw it away is sent; null when it was added. */
    drop: string | null;
    changes: { label: string; count: number; codes: string }[];
    errors: FindingPart[];
    warnings: FindingPart[];
    titleBlock: TitleField[];
  };
}

export interface FindingPart {
  place: string;
  message: string;
  rule: string;
}
