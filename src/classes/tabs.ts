/** The pages of one class, as each of them lists them: `views/partials/class-tabs.hbs`. */

export interface ClassTab {
  href: string;
  text: string;
  current: boolean;
}

const tabs = [
  ['', 'Who needs help'],
  ['/plan', 'What to teach'],
  ['/questions', 'Which question is bad'],
  ['/evenings', 'Class evening'],
  ['/skills', 'Skills'],
  ['/people', 'People'],
  ['/report', 'Report'],
] as const;

export type ClassTabPath = (typeof tabs)[number][0];

export const classTabs = (classId: number, current: ClassTabPath): ClassTab[] =>
  tabs.map(([path, text]) => ({ href: `/classes/${classId}${path}`, text, current: path === current }));
