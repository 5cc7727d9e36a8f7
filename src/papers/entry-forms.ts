import { z } from 'zod';
import { RungwiseError } from '../core/errors.js';
import { readLetters } from '../core/papers/letters.js';
import { nameFault, plainDashes, sameName, tidyName, versionFault, type KnownPaper, type RowSheet } from '../core/papers/result-rows.js';
import type { RollRow } from './class-store.js';
import type { EntryView, Letters, SheetWish } from './entry-service.js';

/** What the forms for results may hold, and how it is read. */

export const guest = 'guest';

export const sheetParams = z.object({ paper: z.uuid(), sitting: z.uuid() });

const typed = z.string().max(1000).default('');
const enterForm = z.object({
  sitting: z.uuid().optional(),
  candidate: typed,
  name: typed,
  version: typed,
  letters: typed,
  /** The version that was doubted, sent along when it is saved all the same. */
  sure: z.string().max(3).optional(),
});

/** The fields of one sheet, as they came. `sitting` is that of a sheet to be corrected. */
export type EntryTyped = z.infer<typeof enterForm>;
export type EntryFaults = Partial<Record<'candidate' | 'name' | 'version' | 'letters', string>>;

export function typedOf(body: unknown): EntryTyped {
  const form = enterForm.safeParse(body);
  if (!form.success) throw new RungwiseError('form-not-understood', 'a sheet that cannot be read');
  return form.data;
}

/** Whose sheet, and what stands on it; or what does not fit, by field. */
export function readSheet(form: EntryTyped, view: EntryView): { wish: SheetWish } | { faults: EntryFaults } {
  const [whose, read] = [readWhose(form, view), readVersion(form, view)];
  if (!('faults' in whose) && !('faults' in read)) return { wish: { ...whose, ...read.typed } };
  return { faults: { ...('faults' in whose ? whose.faults : {}), ...('faults' in read ? read.faults : {}) } };
}

/** Version and letters, which is all of a sheet that can be corrected. */
export function readVersion(form: EntryTyped, { letters }: EntryView): { typed: Letters } | { faults: EntryFaults } {
  const version = form.version.trim();
  const own = /^\d{1,3}$/.test(version) ? letters[Number(version) - 1] : undefined;
  if (own === undefined) return { faults: { version: versionFault(version, letters.length) } };
  const read = readLetters(plainDashes(form.letters), own);
  return read.ok ? { typed: { version: Number(version), choices: read.choices } } : { faults: { letters: read.why } };
}

function readWhose(
  { candidate, name }: EntryTyped,
  view: EntryView,
): { memberId: number } | { guestName: string } | { faults: EntryFaults } {
  const { members, others } = knownPaper(view);
  const guestName = tidyName(name);
  if (candidate !== guest && (candidate !== '' || guestName === '')) {
    const member = members.find(({ memberId }) => String(memberId) === candidate);
    if (member === undefined) return { faults: { candidate: 'Choose whose sheet it is.' } };
    // A result that is there already is met when it is entered, since the same form may have been sent twice.
    return { memberId: member.memberId };
  }
  if (members.some((member) => sameName(member.name) === sameName(guestName)))
    return { faults: { name: `${guestName} is a member of the class: choose that name from the list, or add something to this one.` } };
  const other = others.find((one) => one.name !== guestName && sameName(one.name) === sameName(guestName));
  const why = other === undefined ? nameFault(guestName) : `${other.name} ${other.hindrance}.`;
  return why === null ? { guestName } : { faults: { name: why } };
}

/** The class and the paper as rows of a table are held against them. */
export function knownPaper({ roll, letters }: EntryView): KnownPaper {
  const of = letters[0]?.length ?? 0;
  return {
    letters,
    members: roll.flatMap((row) =>
      row.memberId === null ? [] : [{ memberId: row.memberId, name: row.name, hindrance: hindranceOf(row, of) }],
    ),
    others: roll.flatMap((row) => (row.memberId === null ? [{ name: row.name, hindrance: hindranceOf(row, of) ?? 'has a sitting' }] : [])),
  };
}

export const nameOfMember = ({ roll }: EntryView, memberId: number): string => roll.find((row) => row.memberId === memberId)?.name ?? '';

/** A clean row of a table as a sheet to enter. */
export const wishOf = ({ memberId, name, version, choices }: RowSheet): SheetWish => ({
  version,
  choices,
  ...(memberId === null ? { guestName: name } : { memberId }),
});

export const onScreen = 'has begun it on the screen';

/** Why no sheet can be entered. A paper that was taken up and not begun hinders nobody. */
function hindranceOf({ sitting }: RollRow, of: number): string | null {
  if (sitting === null) return null;
  if (sitting.handedInAt === null) return sitting.startedAt === null ? null : onScreen;
  const mark = `${sitting.right ?? 0} of ${of}`;
  return sitting.way === 'sheet' ? `is already entered: ${mark}` : `has handed it in on the screen: ${mark}`;
}

const csvForm = z.object({
  text: z.string().max(2_000_000).default(''),
  /** A form without a file may send the field as text. */
  file: z.instanceof(Uint8Array).optional().catch(undefined),
  /** Set by the button that imports the clean rows, and how many it named. */
  confirm: z.literal('on').optional(),
  clean: z
    .string()
    .regex(/^\d{1,3}$/)
    .transform(Number)
    .optional(),
});

export function csvTyped(body: unknown): z.infer<typeof csvForm> {
  const form = csvForm.safeParse(body);
  if (!form.success) throw new RungwiseError('form-not-understood', 'a table that cannot be read');
  return form.data;
}

/** The fields of the form that takes a table. */
export const csvFields = { texts: ['text', 'confirm', 'clean'], files: ['file'] };
