import type { TellTalePart, WorkingPart } from '../core/outcome-parts.js';
import type { CautionPart, TitleField } from '../core/page-parts.js';

/** What each page of the calculators shows, exactly. */

export interface CalculatorListPage {
  view: 'calculators/list';
  data: {
    asked: string;
    /** What was found, in words; null when nothing was asked. */
    found: string | null;
    /** Where each topic of the whole list begins; null beside what was found. */
    contents: { href: string; title: string }[] | null;
    topics: { id: string | null; title: string; entries: CalculatorEntry[] }[];
    titleBlock: TitleField[];
  };
}

export interface CalculatorEntry {
  href: string;
  title: string;
  formula: string[];
}

export interface InputField {
  id: string;
  name: string;
  label: string;
  /** Empty for a plain number and for a choice. */
  unit: string;
  unitSpoken: string;
  readsUnit: string;
  /** Boxes to type in: one, or several for a list. Empty for a choice. */
  boxes: { id: string; value: string; label: string }[];
  choices: { value: string; label: string; chosen: boolean }[] | null;
  hint: string | null;
  why: string | null;
}

export interface WorkingLine {
  before: string;
  mathml: string[];
  after: string;
}

export interface CalculatorPage {
  view: 'calculators/calculator';
  data: {
    title: string;
    topicTitle: string;
    action: string;
    /** The calculation holds with this; the name of the rule where there are several. */
    rule: string | null;
    inputs: InputField[];
    /** What is taken for granted unless somebody says otherwise. */
    more: { open: boolean; inputs: InputField[] } | null;
    regions: { value: string; label: string; chosen: boolean }[] | null;
    region: string;
    /** What stands in the way, said once at the top. */
    fault: { word: string; why: string; target: string } | null;
    result: {
      /** Before anything is typed: what to do. */
      waiting: string | null;
      answers: { label: string; value: string }[];
      working: WorkingLine[];
      drawing: Drawing | null;
    };
    formula: string[];
    formulaWords: string | null;
    validity: string | null;
    caution: CautionPart;
    practise: { title: string; objective: string; href: string }[];
    titleBlock: TitleField[];
  };
}

/** A drawing made for these numbers: which partial, and its figures. The partials are `views/partials/drawing-*.hbs`. */
export interface Drawing {
  title: string;
  description: string;
  caption: string;
  width: number;
  height: number;
  /** Paths: thick is so, thin is a measure, dashed is a limit or a region to keep out of. */
  paths: { kind: 'thk' | 'thn' | 'dash' | 'fill' | 'hatch'; d: string }[];
  texts: { x: number; y: number; anchor: 'start' | 'middle' | 'end'; text: string; bold: boolean }[];
}

export interface TryPage {
  view: 'calculators/try';
  data: {
    familyTitle: string;
    calculatorTitle: string;
    calculatorHref: string;
    action: string;
    seed: string;
    form: 'typed' | 'options';
    region: string;
    stem: string;
    options: { letter: string; value: string; text: string; chosen: boolean }[] | null;
    entry: { label: string; unit: string; unitSpoken: string; readsUnit: string; hint: string; value: string; why: string | null } | null;
    optionsWhy: string | null;
    outcome: {
      verdict: { sign: 'yes' | 'no'; word: string; fact: string; said: string };
      tellTales: TellTalePart[];
      working: WorkingPart;
    } | null;
    /** The same question with other numbers, and the other way to be asked it. */
    freshHref: string;
    other: { href: string; label: string } | null;
    caution: CautionPart | null;
    titleBlock: TitleField[];
  };
}
