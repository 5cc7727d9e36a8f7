/** Pages that belong to no feature. */

export interface ErrorPage {
  view: 'errors/error';
  data: { status: number; heading: string; message: string; reference: string | null; backHref: string; backLabel: string };
}

export interface AboutPage {
  view: 'home/about';
  data: { packs: { title: string; version: string; licence: string; questions: number; families: number }[] };
}
