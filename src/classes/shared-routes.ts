import type { FastifyReply, FastifyRequest } from 'fastify';
import { known, RungwiseError } from '../core/errors.js';
import type { MemberService } from './member-service.js';
import { classParams, personParams } from './people-forms.js';
import type { PeopleService } from './people-service.js';

/** What the routes about a class's people share. */

export interface PeopleRoutesNeeds {
  people: PeopleService;
  members: MemberService;
  /** The address people type, such as https://study.example; null means whatever they asked for. */
  origin: string | null;
}

export const config = { access: 'keep-classes' as const };
export const shown = { layout: 'two' as const, styles: ['class.css'] };

export const classOf = (request: FastifyRequest): number => known(classParams.safeParse(request.params)).class;
export const personOf = (request: FastifyRequest): { class: number; person: number } => known(personParams.safeParse(request.params));

type Issues = { issues: { code?: string; path: PropertyKey[]; message: string }[] };

/**
 * What is wrong, by field, in words for the page.
 * @throws RungwiseError `form-not-understood` for what only a changed page sends
 */
export function faultsOf({ issues }: Issues): Record<string, string> {
  if (issues.some(({ code }) => code !== 'custom' && code !== 'too_big')) throw new RungwiseError('form-not-understood');
  const faults: Record<string, string> = {};
  for (const { path, message } of issues) faults[String(path[0])] ??= message;
  return faults;
}

/** @throws RungwiseError `form-not-understood`: these forms hold nothing that is typed */
export function chosen<T>(parsed: { success: true; data: T } | { success: false }): T {
  if (!parsed.success) throw new RungwiseError('form-not-understood');
  return parsed.data;
}

/** Back to the page, which says what was done. */
export const done = (request: FastifyRequest, reply: FastifyReply, said: string): FastifyReply =>
  reply.redirect(`/classes/${classOf(request)}/people?said=${said}`, 303);
