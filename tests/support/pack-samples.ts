import type { PacksPage, UploadPage } from '../../src/packs/page-types.js';

/** The pages about packs as page data. */

const csrf = 'csrf-token';
const titleBlock = [{ label: 'Packs', value: '2 packs', width: 12, name: true, id: false, href: null }] as const;

const packs: PacksPage['data'] = {
  csrf,
  why: null,
  packs: [
    {
      title: 'Entry safety',
      id: 'entry-safety',
      version: '1.0.0',
      licence: 'CC-BY-SA-4.0',
      counts: '412 questions, 53 with fresh numbers',
      origin: 'Comes with the server',
      loaded: '26 Nov 2026',
    },
  ],
  waiting: [{ href: '/packs/uploads/0b6f', name: 'hut.zip', by: 'H. Vane', when: '26 Nov 2026' }],
  titleBlock: [...titleBlock],
};

const finding = { place: 'questions/hut.yaml, line 12, column 9', message: 'The key "why" is missing here.', rule: 'missing-key' };
const upload: UploadPage['data'] = {
  csrf,
  fileName: 'hut.zip',
  headline: 'wobbling-hut 1.1.0 can be added.',
  look: 'must',
  lead: 'Version 1.0.0 is here now. Nothing is changed until you confirm.',
  confirm: '/packs/uploads/0b6f/add',
  confirmLabel: 'Bring it up to this version',
  drop: '/packs/uploads/0b6f/drop',
  changes: [{ label: 'New questions', count: 2, codes: 'HU-01-006, HU-01-007' }],
  errors: [],
  warnings: [finding],
  titleBlock: [...titleBlock],
};

export const packPages: readonly { name: string; page: PacksPage | UploadPage }[] = [
  { name: 'packs', page: { view: 'packs/list', data: packs } },
  { name: 'packs-fault', page: { view: 'packs/list', data: { ...packs, packs: [], waiting: [], why: 'Choose the archive first.' } } },
  { name: 'pack-upload', page: { view: 'packs/upload', data: upload } },
  {
    name: 'pack-upload-errors',
    page: {
      view: 'packs/upload',
      data: {
        ...upload,
        look: 'no',
        headline: '1 error: nothing was changed.',
        confirm: null,
        changes: [],
        errors: [finding],
        warnings: [],
      },
    },
  },
];
