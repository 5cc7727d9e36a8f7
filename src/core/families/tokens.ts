/** The words of a formula, read one at a time with the column each starts at (from 1). */
export interface Token {
  kind: 'number' | 'name' | 'sign' | 'end';
  text: string;
  column: number;
}

type Fault = (column: number, reason: string) => Error;

// Sticky patterns without nesting: each runs once over what it matches.
const number = /\d+(?:\.\d+)?/y;
const name = /[A-Za-z][A-Za-z0-9]*/y;
const sign = /<=|>=|==|!=|[-+*/(),<>]/y;

export class Reader {
  private position = 0;
  private next: Token;

  constructor(
    private readonly text: string,
    private readonly fault: Fault,
  ) {
    this.next = this.read();
  }

  private match(pattern: RegExp): string | null {
    pattern.lastIndex = this.position;
    return pattern.exec(this.text)?.[0] ?? null;
  }

  private read(): Token {
    while (this.text[this.position] === ' ') this.position += 1;
    const column = this.position + 1;
    if (this.position >= this.text.length) return { kind: 'end', text: '', column };
    for (const [kind, pattern] of [
      ['number', number],
      ['name', name],
      ['sign', sign],
    ] as const) {
      const text = this.match(pattern);
      if (text === null) continue;
      this.position += text.length;
      // "2P" or "1e400" would otherwise read as two words side by side, which hides what was meant.
      if (kind === 'number' && this.match(name) !== null)
        throw this.fault(column, 'a letter stands right after a number; write * between them, and no exponents');
      return { kind, text, column };
    }
    const [character = ''] = this.text.slice(this.position);
    throw this.fault(column, `${JSON.stringify(character)} has no meaning in a formula`);
  }

  take(): Token {
    const token = this.next;
    if (token.kind !== 'end') this.next = this.read();
    return token;
  }

  isSign(texts: readonly string[]): boolean {
    return this.next.kind === 'sign' && texts.includes(this.next.text);
  }

  expect(text: string): void {
    const token = this.take();
    if (token.kind !== 'sign' || token.text !== text) throw this.fault(token.column, `"${text}" should stand here`);
  }

  expectEnd(): void {
    if (this.next.kind !== 'end') throw this.fault(this.next.column, `"${this.next.text}" stands where the formula should end`);
  }
}
