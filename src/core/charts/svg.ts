/** SVG as text: charts of one ink, whose look the style sheet gives by class. Nothing but numbers and escaped texts goes in. */

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => escapes[sign] ?? '');

type Value = string | number;

/** Numbers to two places, which is finer than any screen. */
const written = (value: Value): string => (typeof value === 'number' ? String(Math.round(value * 100) / 100) : escaped(value));

export function element(name: string, attributes: Readonly<Record<string, Value>>, content: string | readonly string[] = []): string {
  const given = Object.entries(attributes).map(([key, value]) => ` ${key}="${written(value)}"`);
  const inside = [content].flat().join('');
  return inside === '' ? `<${name}${given.join('')}/>` : `<${name}${given.join('')}>${inside}</${name}>`;
}

export const words = (text: string, attributes: Readonly<Record<string, Value>>): string => element('text', attributes, escaped(text));

/** The whole chart; what it shows stands in the table beside it, so a screen reader is told its name only. */
export function chart(width: number, height: number, name: string, content: readonly string[]): string {
  return element('svg', { class: 'chart', viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': name }, content);
}
