import type { Person } from '../accounts/index.js';
import { markSheet } from './hand-in.js';
import type { SettingService } from './set-service.js';

/** A wrong number of a version makes a good sheet a bad one without a word: so letters are held against the other versions too. */

/** Words of doubt where the letters would be far more often right on another version; null where they would not. */
export async function doubtOf(
  setting: SettingService,
  person: Person,
  paperId: string,
  { version, choices }: { version: number; choices: readonly (string | null)[] },
): Promise<string | null> {
  const head = await setting.headOf(person, paperId);
  const { versions } = await setting.versions(
    person,
    paperId,
    Array.from({ length: head.versions }, (_, index) => index + 1),
  );
  const sheet = choices.map((choice, index) => ({ position: index + 1, choice }));
  const marks = versions.map((each) => ({
    version: each.version,
    right: markSheet(each.items, sheet).filter(({ right }) => right).length,
  }));
  const own = marks.find((mark) => mark.version === version)?.right ?? 0;
  const best = marks.reduce((a, b) => (b.right > a.right ? b : a), { version, right: own });
  if (best.right - own < Math.max(3, choices.length / 4)) return null;
  return `These letters make ${own} right on version ${version}, and ${best.right} on version ${best.version}. Mend the number, or save once more if it is right.`;
}
