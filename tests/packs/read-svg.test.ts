import { describe, expect, it } from 'vitest';
import { drawingSvg } from '../../src/core/drawing.js';
import { randomFrom } from '../../src/core/random.js';
import { readSvg } from '../../src/packs/drawings/read-svg.js';
import { drawing as printed } from '../../src/web/view-helpers.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const svg = (inside: string, root = 'viewBox="0 0 480 300"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${root}><title>A plug</title><desc>The inside of a plug.</desc>${inside}</svg>`;
const rulesOf = (text: string): string[] => [...new Set(readSvg('plug', bytes(text)).faults.map(({ rule }) => rule))];
const fuse =
  '<g id="fuse" data-mark="120 80"><title>The fuse</title><rect x="10" y="20" width="30" height="10" class="thin"/><text class="name" x="5" y="9">fuse</text></g>';

describe('readSvg', () => {
  it('reads titles, size, named parts and shapes', () => {
    const { drawing, faults } = readSvg('plug', bytes(`<?xml version="1.0" encoding="UTF-8"?>\n<!-- ours -->\n${svg(fuse)}`));
    expect(faults).toEqual([]);
    expect(drawing).toMatchObject({ id: 'plug', title: 'A plug', description: 'The inside of a plug.', width: 480, height: 300 });
    expect(drawing?.parts).toEqual([{ id: 'fuse', name: 'The fuse', at: [120, 80] }]);
    const page = drawing === null ? '' : drawingSvg(drawing, { named: true, marks: [], prefix: 'd' });
    expect(page).toContain('<rect x="10" y="20" width="30" height="10" class="thin"/>');
    expect(page).not.toContain('data-mark');
    expect(page).not.toContain('id="fuse"');
  });

  it.each([
    ['a script', svg('<script>alert(1)</script>'), 'drawing-unsafe'],
    ['a handler', svg('<rect x="1" y="1" width="2" height="2" onclick="alert(1)"/>'), 'drawing-unsafe'],
    ['a style', svg('<rect x="1" y="1" width="2" height="2" style="fill:url(http://a.b/c)"/>'), 'drawing-unsafe'],
    ['a style sheet', svg('<style>*{}</style>'), 'drawing-unsafe'],
    ['a link', svg('<a href="javascript:alert(1)"><path d="M0 0"/></a>'), 'drawing-unsafe'],
    ['a picture', svg('<image href="http://a.b/c.png"/>'), 'drawing-unsafe'],
    ['a use', svg('<use href="#fuse"/>'), 'drawing-unsafe'],
    ['foreign markup', svg('<foreignObject><b>x</b></foreignObject>'), 'drawing-unsafe'],
    ['an animation', svg('<animate attributeName="x"/>'), 'drawing-unsafe'],
    ['a document type with entities', `<!DOCTYPE svg [<!ENTITY a "b">]>${svg('')}`, 'drawing-unsafe'],
    ['an instruction', `<?xml-stylesheet href="http://a.b/c"?>${svg('')}`, 'drawing-unsafe'],
    ['a colour', svg('<rect x="1" y="1" width="2" height="2" fill="red"/>'), 'drawing-unsafe'],
    ['a look that is none', svg('<rect x="1" y="1" width="2" height="2" class="off-paper"/>'), 'drawing-unsafe'],
    ['a handler on the root', svg('', 'viewBox="0 0 480 300" onload="alert(1)"'), 'drawing-unsafe'],
    ['a namespace of its own', svg('<x:script xmlns:x="http://www.w3.org/1999/xhtml">a</x:script>'), 'drawing-unsafe'],
    ['a transform that is none', svg('<g transform="url(#a)"/>'), 'drawing-unsafe'],
    ['a number that is none', svg('<line x1="calc(1px)" y1="0" x2="1" y2="1"/>'), 'drawing-unsafe'],
    ['a title in a title', svg('<g><title>The <title>&lt;/svg&gt;&lt;img src=x&gt;</title></title></g>'), 'drawing-unsafe'],
    ['a shape in a description', svg('<g><desc>It <tspan>&lt;b&gt;</tspan></desc></g>'), 'drawing-unsafe'],
    ['words outside a text', svg('<g>hello</g>'), 'drawing-shape'],
    ['an unknown entity', svg('<text x="1" y="1">&nbsp;</text>'), 'drawing-shape'],
    ['an open element', svg('<g>'), 'drawing-shape'],
    ['no svg', '<html/>', 'drawing-shape'],
    ['nothing', '', 'drawing-shape'],
    ['no title', '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 480 300"><desc>x</desc></svg>', 'drawing-shape'],
    ['no view box', svg('', ''), 'drawing-shape'],
    ['a part without a name', svg('<g id="fuse" data-mark="1 1"/>'), 'drawing-shape'],
    ['a part without a mark', svg('<g id="fuse"><title>x</title></g>'), 'drawing-shape'],
    ['a mark outside the drawing', svg('<g id="fuse" data-mark="481 1"><title>x</title></g>'), 'drawing-shape'],
    ['two parts of one name', svg(fuse + fuse), 'drawing-shape'],
    ['too many elements', svg('<path d="M0 0"/>'.repeat(1_600)), 'drawing-too-large'],
    ['elements too deep', svg('<g>'.repeat(20) + '</g>'.repeat(20)), 'drawing-too-large'],
    ['too many bytes', svg(' '.repeat(70_000)), 'drawing-too-large'],
  ])('refuses %s', (_what, text, rule) => {
    expect(rulesOf(text)).toEqual([rule]);
    expect(readSvg('plug', bytes(text)).drawing).toBeNull();
  });

  it('says where in the file the fault is', () => {
    const [fault] = readSvg('plug', bytes(`${svg('\n\n  <script/>')}`)).faults;
    expect(fault?.line).toBe(3);
  });

  it('never throws, and lets nothing through that a page would not print as shapes, whatever is broken in a sound file', () => {
    const random = randomFrom('read-svg');
    const sound = svg(fuse);
    const scraps = [
      '<script>',
      '</g>',
      ' onload="x"',
      '"',
      '<',
      '>',
      '&lt;',
      '&#x3c;',
      '\0',
      '\u202e',
      '<!--',
      ']]>',
      '<svg>',
      ' href="//a"',
    ];
    for (let tried = 0; tried < 3_000; tried += 1) {
      const at = random.below(sound.length);
      const broken = sound.slice(0, at) + (scraps[random.below(scraps.length)] ?? '') + sound.slice(at + random.below(6));
      const { drawing, faults } = readSvg('plug', bytes(broken));
      expect(drawing === null).toBe(faults.length > 0);
      if (drawing === null) continue;
      const markup = drawingSvg(drawing, { named: true, marks: [], prefix: 'd' });
      expect(String(printed(markup))).toBe(markup);
    }
  });
});
