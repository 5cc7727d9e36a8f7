import type { FieldPart, TitleField } from '../core/page-parts.js';
import type { SaidPart } from './people-page-types.js';

/** What a candidate's pages about classes show, exactly. */

/** Asks for a code. What a visitor had written beside a code that died is kept. */
export interface JoinPage {
  view: 'classes/join';
  data: {
    csrf: string;
    code: FieldPart;
    kept: { name: string; region: string } | null;
    who: { visitor: boolean; staff: boolean };
  };
}

/** The class that a code opens. */
export interface JoinFoundPage {
  view: 'classes/join-found';
  data: {
    csrf: string;
    code: string;
    name: string;
    facts: string[];
    /** A visitor says who they are. */
    start: {
      startToken: string;
      name: FieldPart;
      regions: { value: string; label: string; chosen: boolean }[];
    } | null;
    /** A candidate who is in joins with one button. */
    join: boolean;
    already: boolean;
    staff: boolean;
    titleBlock: TitleField[];
  };
}

/** The classes that a candidate is in, and who sees what. */
export interface OwnClassesPage {
  view: 'classes/mine';
  data: {
    csrf: string;
    said: SaidPart | null;
    classes: { name: string; tutors: string; facts: string; leave: string; ended: boolean }[];
    slip: { by: string; on: string } | null;
    titleBlock: TitleField[];
  };
}
