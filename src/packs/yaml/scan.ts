import { CST, Lexer, Parser } from 'yaml';
import { yamlLimits } from './limits.js';
import { syntaxWords } from './syntax-words.js';
import type { TextFault } from './text.js';

/** `tokens` is null when the file must not be parsed further: it is too deep, too large, or has a second document. */
export interface Scan {
  tokens: CST.Token[] | null;
  faults: TextFault[];
}

/** How many pieces all the files of a pack may still have; what is read is taken off. */
export interface Budget {
  pieces: number;
}

/**
 * Takes the text apart piece by piece and stops at a limit. The parser is a loop with a stack of its own, so depth is known
 * before anything recursive runs: the package's next step, composing, can end the whole process on a thousand brackets.
 */
export function scan(text: string, budget: Budget): Scan {
  const parser = new Parser();
  const watch: Watch = { faults: [], unexpected: [], budget, pieces: 0, signs: 0, documents: 0, counted: 0 };
  const tokens: CST.Token[] = [];
  let before: readonly string[] = [];
  const stopped = (fault: TextFault): Scan => ({ tokens: null, faults: [...watch.faults, fault] });
  for (const piece of new Lexer().lex(text)) {
    const kind = before[0] === CST.SCALAR ? 'scalar' : CST.tokenType(piece);
    if (partsDigits(before, piece)) watch.faults.push({ rule: 'yaml-comma', offset: parser.offset, message: words.comma });
    const limit = look(watch, kind, parser.offset, parser.stack);
    if (limit) return stopped(limit);
    for (const token of parser.next(piece)) tokens.push(token);
    const broken = count(watch, tokens);
    if (broken) return stopped(broken);
    before = [piece, ...before.slice(0, 2)];
  }
  tokens.push(...parser.end());
  const broken = count(watch, tokens);
  return broken ? stopped(broken) : { tokens, faults: watch.faults };
}

/** A comma between two digits with no space after it, as people write 0,4: YAML takes it for two entries. The pieces before, the latest first. */
const partsDigits = ([mark, comma, digit]: readonly string[], piece: string): boolean =>
  mark === CST.SCALAR && comma === ',' && /\d$/.test(digit ?? '') && /^\d/.test(piece);

/** What went by so far. */
interface Watch {
  faults: TextFault[];
  unexpected: TextFault[];
  budget: Budget;
  pieces: number;
  /** Since the last word. */
  signs: number;
  documents: number;
  /** Tokens looked at. */
  counted: number;
}

/** Looks at one piece before it is parsed; answers with the fault that must stop the reading. */
function look(watch: Watch, kind: CST.TokenType | null, offset: number, stack: CST.Token[]): TextFault | null {
  const refusal = refusals.get(kind);
  if (refusal && watch.faults.length < yamlLimits.faults) watch.faults.push({ ...refusal, offset });
  if (kind === 'scalar' || kind === 'single-quoted-scalar' || kind === 'double-quoted-scalar') watch.signs = 0;
  else if (kind !== 'space' && kind !== 'newline' && kind !== 'comment') watch.signs += 1;
  watch.pieces += 1;
  watch.budget.pieces -= 1;
  const top = stack[stack.length - 1];
  // Below the top there are only lists and mappings, and the document itself.
  const depth = stack.length - (top !== undefined && 'items' in top ? 1 : 2);
  if (depth > yamlLimits.depth) return { rule: 'yaml-depth', offset: stack[depth]?.offset ?? offset, message: words.depth };
  if (watch.pieces > yamlLimits.pieces) return { rule: 'yaml-size', offset, message: words.pieces };
  if (watch.budget.pieces < 0) return { rule: 'pack-size', offset, message: words.together };
  if (watch.signs > yamlLimits.signsInARow) return { rule: 'yaml-size', offset, message: words.signs };
  return overfull(top, offset);
}

/** Looks at the parts of the stream that were finished since the last look. */
function count(watch: Watch, tokens: readonly CST.Token[]): TextFault | null {
  for (; watch.counted < tokens.length; watch.counted += 1) {
    const token = tokens[watch.counted] as CST.Token;
    if (token.type === 'document') watch.documents += 1;
    if (token.type === 'error') {
      watch.unexpected.push({ rule: 'yaml-syntax', offset: token.offset, message: syntaxWords('UNEXPECTED_TOKEN', token.message) });
    }
    if (watch.documents > 1) return { rule: 'yaml-documents', offset: token.offset, message: words.documents };
    if (watch.unexpected.length <= yamlLimits.faults) continue;
    watch.faults.push(...watch.unexpected.slice(0, -1));
    return { rule: 'yaml-syntax', offset: token.offset, message: words.unexpected };
  }
  return null;
}

/** The parser lists lines that only hold a comment as entries too, so this first look is twice as generous as the exact one later. */
function overfull(open: CST.Token | undefined, offset: number): TextFault | null {
  if (open === undefined || !('items' in open)) return null;
  const map = open.type === 'block-map' || (open.type === 'flow-collection' && open.start.type === 'flow-map-start');
  const limit = 2 * (map ? yamlLimits.keysPerMapping : yamlLimits.entriesPerList);
  return open.items.length > limit ? { rule: 'yaml-size', offset, message: map ? words.keys : words.entries } : null;
}

const words = {
  comma: 'A comma stands between two digits. For decimals write a point (0.4). Where it parts two entries, put a space after it (3, 5).',
  depth: `Lists and mappings stand inside one another more than ${yamlLimits.depth} deep here. A pack needs fewer than ten: look for brackets that are not closed, or write it flatter.`,
  pieces: `The file has too many parts (over ${yamlLimits.pieces}). Split it into several files.`,
  together: `The files of the pack have too many parts together (over ${yamlLimits.piecesTogether}); what follows was not read. Split the pack.`,
  signs: `Over ${yamlLimits.signsInARow} signs such as - ? : , [ stand here without a word between them. Delete what does not belong here.`,
  keys: `A mapping has more than ${yamlLimits.keysPerMapping} keys here. Did you forget the "- " that begins each entry of a list?`,
  entries: `A list has more than ${yamlLimits.entriesPerList} entries. Split it into several files.`,
  documents: 'A second document begins here (after a line --- or ...). A file holds one only: put the rest into a file of its own.',
  unexpected: 'There is more in this file that cannot be read. Mend the places above first.',
};

const quoteIt = 'If it is the beginning of a text, put the whole text in quote marks.';
const refusals = new Map<CST.TokenType | null, { rule: string; message: string }>([
  [
    'anchor',
    { rule: 'yaml-anchor', message: `A word that begins with & names a part for use elsewhere, which packs do not allow. ${quoteIt}` },
  ],
  [
    'alias',
    { rule: 'yaml-alias', message: `A word that begins with * stands for a part written elsewhere, which packs do not allow. ${quoteIt}` },
  ],
  [
    'tag',
    { rule: 'yaml-tag', message: `A word that begins with ! changes the kind of what follows, which packs do not allow. ${quoteIt}` },
  ],
  [
    'directive-line',
    {
      rule: 'yaml-directive',
      message: 'A line that begins with % is an instruction to the reading program, which packs do not allow. Delete it.',
    },
  ],
]);
