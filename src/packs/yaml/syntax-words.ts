import type { ErrorCode } from 'yaml';

/** What a fault of writing most likely means to somebody who writes YAML for the first time, and how to mend it. */
export function syntaxWords(code: ErrorCode, original: string): string {
  return (
    byMessage.find(([start]) => original.startsWith(start))?.[1] ??
    byCode.get(code) ??
    `This cannot be read as YAML (${original}). Compare it with a place that works.`
  );
}

const quotes = 'put the whole text in quote marks';

/** Where one code has several causes: the beginning of the package's message. */
const byMessage: readonly (readonly [string, string])[] = [
  ['Missing closing "quote', 'A quote mark " is opened and never closed. Add the closing one at the end of the text.'],
  ["Missing closing 'quote", "A quote mark ' is opened and never closed. Add the closing one at the end of the text."],
  [
    'Sequence item without - indicator',
    'This line belongs neither to the entry above nor to the list. Indent it exactly like the other keys of its entry.',
  ],
  [
    'Implicit map keys need to be followed by map values',
    'A key without a colon: write "key: value", or indent the line if it carries on the text above.',
  ],
  ['Block scalar header includes extra characters', 'After | or > the line must end; the text begins on the next line, indented.'],
  ['Not a YAML token', `A text that begins with > or | must be quoted: ${quotes}.`],
  [
    'Unexpected block-seq-ind on same line with key',
    `A list begins on the line below its key. If it is a text that begins with a hyphen, ${quotes}.`,
  ],
  ['Unexpected flow-map-end', 'A closing } without an opening {. Delete it, or put the text in quote marks.'],
  ['Unexpected flow-seq-end', 'A closing ] without an opening [. Delete it, or put the text in quote marks.'],
  ['Unexpected , in', 'A comma too many. Delete it.'],
  [
    'Comments must be separated',
    'A # right behind something else: put a space before it if it begins a comment, or put the text in quote marks.',
  ],
];

const byCode = new Map<ErrorCode, string>([
  [
    'BAD_DQ_ESCAPE',
    'A backslash in a text between " marks begins a special sign, and this one does not exist. Write \\\\ for a backslash, or use \' marks.',
  ],
  [
    'BAD_INDENT',
    'The line is indented too little or too much. Keys that belong together begin in the same column; brackets opened above must be closed.',
  ],
  ['BAD_SCALAR_START', `A text cannot begin with this sign unless it is quoted: ${quotes}.`],
  ['BLOCK_AS_IMPLICIT_KEY', `A second colon on one line, or a line indented too far. If the colon belongs to the text, ${quotes}.`],
  ['BLOCK_IN_FLOW', 'Inside [ ] and { } the parts are separated by commas, without "- " and without indentation.'],
  ['KEY_OVER_1024_CHARS', `A key is far too long. If it is a text with a colon in it, ${quotes}.`],
  ['MISSING_CHAR', 'A sign is missing here: look for a comma, a colon, a closing bracket or a closing quote mark.'],
  [
    'MULTILINE_IMPLICIT_KEY',
    'A line without a colon followed by a space: write "key: value"; a text that goes on must be indented further than its key.',
  ],
  ['NON_STRING_KEY', `A key must be a plain word. If this is a text that begins with { or [, ${quotes}.`],
  ['TAB_AS_INDENT', 'The line is indented with a tab. Use spaces.'],
  [
    'UNEXPECTED_TOKEN',
    `Something stands here that does not belong to what comes before. A text that begins with a quote mark, { or [ must be quoted as a whole: ${quotes}.`,
  ],
]);
