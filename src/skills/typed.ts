import { shortDate } from '../core/calendar.js';
import type { FieldPart } from '../core/page-parts.js';
import { anchorOf } from './listed.js';
import type { Signed } from './service.js';

/** A form that comes back: what was typed, what is wrong with it, and where. */
export interface Typed {
  fault: { word: string; why: string; target: string };
  /** What was filled in for a skill that is not signed. */
  sign: { id: string; key: string; ticked: readonly number[]; missing: readonly number[]; seenOn: FieldPart; remarks: FieldPart } | null;
  withdraw: { id: string; reason: FieldPart } | null;
}

interface Wish {
  id: string;
  skill: string;
  ticked: readonly number[];
  seenOn: string;
  remarks: string;
}

/** After what came of wanting to sign; null when it is signed. */
export function signBack(wish: Wish, signed: Signed): Typed | null {
  const anchor = anchorOf(wish.skill);
  const word = 'Not signed.';
  const sign = { ...wish, key: wish.skill, missing: [], seenOn: plain(wish.seenOn), remarks: plain(wish.remarks) };
  switch (signed.state) {
    case 'signed':
      return null;
    case 'already': {
      const why = `${signed.by} has signed it already, as seen on ${shortDate(signed.seenOn)}.`;
      return { fault: { word, why, target: anchor }, sign: null, withdraw: null };
    }
    case 'changed': {
      const why = 'What this skill asks was changed meanwhile. Look at it again before you sign.';
      return { fault: { word, why, target: 'skills' }, sign: { ...sign, ticked: [] }, withdraw: null };
    }
    case 'refused': {
      const { missing, faults } = signed.reading;
      const whyOf = (field: string): string | null => faults.find((fault) => fault.field === field)?.why ?? null;
      const targets = { criteria: `${anchor}-c${(missing[0] ?? 0) + 1}`, seenOn: `${anchor}-day`, remarks: `${anchor}-remarks` };
      const [first] = faults;
      return {
        fault: { word, why: first?.why ?? '', target: targets[first?.field ?? 'criteria'] },
        sign: {
          ...sign,
          missing,
          seenOn: { value: wish.seenOn, why: whyOf('seenOn') },
          remarks: { value: wish.remarks, why: whyOf('remarks') },
        },
        withdraw: null,
      };
    }
  }
}

export const withdrawBack = (id: string, reason: string, why: string): Typed => ({
  fault: { word: 'Not withdrawn.', why, target: `reason-${id}` },
  sign: null,
  withdraw: { id, reason: { value: reason, why } },
});

const plain = (value: string): FieldPart => ({ value, why: null });
