import type { Person } from '../accounts/index.js';
import { dayNumber, shortDate, isoDay } from '../core/calendar.js';
import type { TitleField } from '../core/page-parts.js';
import { counted } from '../core/words.js';
import type { FindingPart, PacksPage, UploadPage } from './page-types.js';
import { refusalWords, type PackPlan } from './plan.js';
import type { Finding } from './reading/finding.js';
import type { Upload, UploadsService } from './uploads.js';

/** From what the services say of packs to what a page shows. */

const when = (date: Date, person: Person): string => shortDate(isoDay(dayNumber(date.getTime(), person.timeZone)));
const field = (label: string, value: string, width: TitleField['width'], name = false): TitleField => {
  return { label, value, width, name, id: false, href: null };
};

export function packsPage(found: Awaited<ReturnType<UploadsService['list']>>, person: Person, csrf: string, why: string | null): PacksPage {
  return {
    view: 'packs/list',
    data: {
      csrf,
      why,
      packs: found.packs.map((pack) => ({
        title: pack.title,
        id: pack.slug,
        version: pack.version,
        licence: pack.licence,
        counts: `${counted(pack.questions, 'question')}, ${pack.families} with fresh numbers${pack.retired > 0 ? `, ${pack.retired} retired` : ''}`,
        origin: pack.origin === 'folder' ? 'Comes with the server' : 'Added here',
        loaded: when(pack.loadedAt, person),
      })),
      waiting: found.waiting.map((upload) => ({
        href: `/packs/uploads/${upload.id}`,
        name: upload.fileName,
        by: upload.byName,
        when: when(upload.uploadedAt, person),
      })),
      titleBlock: [field('Packs', counted(found.packs.length, 'pack'), 6, true), field('Looked at by', person.displayName, 6)],
    },
  };
}

export function uploadPage(upload: Upload, person: Person, csrf: string): UploadPage {
  const { report, plan, result } = upload;
  const findings = (level: Finding['level']): FindingPart[] =>
    report.findings
      .filter((finding) => finding.level === level)
      .map(({ file, line, column, message, rule }) => ({
        place: file === '.' ? 'The pack' : `${file}, line ${line}, column ${column}`,
        message,
        rule,
      }));
  const errors = [...refusals(plan), ...findings('error')];
  const can = plan !== null && errors.length === 0 && !upload.takesServerPack && plan.state !== 'unchanged';
  const shown = result ?? plan;
  return {
    view: 'packs/upload',
    data: {
      csrf,
      fileName: upload.fileName,
      ...verdict(upload, errors.length, can),
      confirm: can ? `/packs/uploads/${upload.id}/add` : null,
      drop: result === null ? `/packs/uploads/${upload.id}/drop` : null,
      confirmLabel: confirmWords(plan),
      changes: shown === null ? [] : changesOf(shown),
      errors,
      warnings: findings('warning'),
      titleBlock: [
        field('Pack', report.head === null ? upload.fileName : `${report.head.id} ${report.head.version}`, 6, true),
        field('Sent by', upload.byName, 3),
        field('On', when(upload.uploadedAt, person), 3),
      ],
    },
  };
}

function verdict(
  { report, plan, result, takesServerPack }: Upload,
  errors: number,
  can: boolean,
): Pick<UploadPage['data'], 'headline' | 'look' | 'lead'> {
  const name = report.head === null ? 'The pack' : `${report.head.id} ${report.head.version}`;
  if (result !== null) return { look: 'yes', headline: `${name} is in the bank.`, lead: 'Its questions are asked from the next round on.' };
  if (errors > 0)
    return {
      look: 'no',
      headline: `${counted(errors, 'error')}: nothing was changed.`,
      lead: 'Mend what stands below in your files, pack them again and send them again.',
    };
  if (takesServerPack)
    return {
      look: 'no',
      headline: 'This id belongs to a pack that comes with the server.',
      lead: 'Give your pack an id of its own in pack.yaml, and send it again. Candidates then study both.',
    };
  if (plan?.state === 'unchanged')
    return { look: 'yes', headline: `${name} is here already, word for word.`, lead: 'There is nothing to add.' };
  const lead = `${versionWords(plan)} Nothing is changed until you confirm.`;
  return { look: can ? 'must' : 'no', headline: `${name} can be added.`, lead };
}

function confirmWords(plan: PackPlan | null): string {
  if (plan === null || plan.before === null) return 'Add this pack';
  return { newer: 'Bring it up to this version', same: 'Put this in its place', older: 'Go back to this older version' }[plan.step];
}

function versionWords(plan: PackPlan | null): string {
  if (plan === null || plan.before === null) return 'It is new here.';
  if (plan.step === 'older') return `Version ${plan.before} is here now, and this one, ${plan.version}, is older: you would go back.`;
  if (plan.step === 'same') return `What is here now bears the same version, ${plan.before}. Raise the version with each release.`;
  return `Version ${plan.before} is here now.`;
}

const refusals = (plan: PackPlan | null): FindingPart[] =>
  (plan?.refused ?? []).map(({ code, why }) => ({ place: code, message: `${code} cannot be taken: ${refusalWords[why]}.`, rule: why }));

function changesOf(plan: PackPlan): UploadPage['data']['changes'] {
  const kept = plan.changed.filter(({ keeps }) => keeps).map(({ code }) => code);
  const afresh = plan.changed.filter(({ keeps }) => !keeps).map(({ code }) => code);
  return [
    { label: 'New questions', codes: plan.added },
    { label: 'New wording, same question: what people remember of it counts on', codes: kept },
    { label: 'Changed: people start afresh with these', codes: afresh },
    { label: 'Back again', codes: plan.returned },
    { label: 'Retired: asked no more, kept in the history', codes: plan.retired },
    ...plan.around,
  ]
    .filter(({ codes }) => codes.length > 0)
    .map(({ label, codes }) => ({ label, count: codes.length, codes: codes.join(', ') }));
}
