/** The parts that pages are made of, as plain data. Templates choose and repeat; they compute nothing. */

/** One field of a title block; widths are columns of twelve and each row of fields sums to twelve. */
export interface TitleField {
  label: string;
  value: string;
  width: 2 | 3 | 4 | 6 | 8 | 12;
  /** Set bold: the name of the thing. */
  name: boolean;
  /** An identifier: figures of equal width, not broken. */
  id: boolean;
  href: string | null;
}

export interface CautionPart {
  sign: 'electric' | 'general';
  text: string;
}

/** A field of a form with what was typed and, when it did not fit, why. */
export interface FieldPart {
  value: string;
  why: string | null;
}

/** What the frame around every page needs. */
export interface Chrome {
  title: string;
  /** `two` when the sheet has a second view at the side on wide screens. */
  /** `wide` with the style sheet `class.css`. */
  layout: 'one' | 'two' | 'wide';
  nav: { href: string; label: string; current: boolean }[];
  you: { name: string; href: string } | null;
  /** Names of browser modules to load, such as `numeric-field`. */
  scripts: string[];
  /** Names of further style sheets of ours, such as `print-paper`. */
  styles: string[];
  /** Said when the connection is not encrypted and does not stay on this machine. */
  plainHttp: boolean;
}

/** A form that starts a round on one objective. */
export interface PractisePart {
  csrf: string;
  /** Id of the round that it starts. */
  round: string;
  /** Slug of the pack and code of the objective, parted by a stroke. */
  objective: string;
  label: string;
}
