import { existsSync } from 'node:fs';
import { readFile, readdir } from 'node:fs/promises';
import { dirname, join, normalize } from 'node:path';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import { projectFolder } from '../src/platform/project-folder.js';

/**
 * Every query is a text that stands in the sources: whatever people send goes beside it as a parameter. Found in the syntax tree: the text
 * of each `query(…)` must be put together from constants alone. What cannot be followed stands in the list below, each with its reason.
 */

/** File, the expression in it, and why nobody's text can be in it. */
const known: readonly (readonly [file: string, expression: string, why: string])[] = [
  ['src/platform/migrate.ts', 'sql', 'a migration’s own file'],
  ['src/analysis/question-tally-store.ts', 'people[scope]', 'one of the constants above it, by a key out of two'],
  ['src/personal-data/held-store.ts', '*', 'constants of that file, by the kinds of things that are held'],
  ['src/platform/backup/', '*', 'names of tables and columns from the database’s own catalogue, each quoted as an identifier'],
];

const isKnown = (file: string, expression: string): boolean =>
  known.some(([where, what]) => file.startsWith(where) && (what === '*' || what === expression));

interface Source {
  file: string;
  tree: ts.SourceFile;
  /** What is declared at the top, by name. */
  constants: Map<string, ts.Expression>;
  functions: Map<string, ts.Node>;
  imports: Map<string, { file: string; name: string }>;
}

const all = new Map<string, Source>();

async function load(): Promise<void> {
  const names = (await readdir(join(projectFolder, 'src'), { recursive: true })).filter((name) => name.endsWith('.ts'));
  for (const name of names.filter((one) => !one.includes('generated') && !one.startsWith('browser'))) {
    const file = `src/${name}`;
    all.set(file, read(file, await readFile(join(projectFolder, file), 'utf8')));
  }
}

function read(file: string, text: string): Source {
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const source: Source = { file, tree, constants: new Map(), functions: new Map(), imports: new Map() };
  for (const statement of tree.statements) {
    if (ts.isVariableStatement(statement))
      for (const { name, initializer } of statement.declarationList.declarations)
        if (ts.isIdentifier(name) && initializer !== undefined && (statement.declarationList.flags & ts.NodeFlags.Const) !== 0)
          source.constants.set(name.text, initializer);
    if (ts.isFunctionDeclaration(statement) && statement.name !== undefined) source.functions.set(statement.name.text, statement);
    if (ts.isImportDeclaration(statement) && ts.isStringLiteral(statement.moduleSpecifier)) {
      const bindings = statement.importClause?.namedBindings;
      if (bindings === undefined || !ts.isNamedImports(bindings) || !statement.moduleSpecifier.text.startsWith('.')) continue;
      const from = normalize(join(dirname(file), statement.moduleSpecifier.text.replace(/\.js$/, '.ts')));
      for (const { name, propertyName } of bindings.elements)
        source.imports.set(name.text, { file: from, name: (propertyName ?? name).text });
    }
  }
  return source;
}

/** Null when the text is put together from constants; else the first part that is not. */
function foreignPart(node: ts.Node, source: Source): string | null {
  if (isKnown(source.file, node.getText())) return null;
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isNumericLiteral(node)) return null;
  if (ts.isParenthesizedExpression(node) || ts.isAsExpression(node) || ts.isSatisfiesExpression(node))
    return foreignPart(node.expression, source);
  if (ts.isTemplateExpression(node))
    return first(
      node.templateSpans.map(({ expression }) => expression),
      source,
    );
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) return first([node.left, node.right], source);
  if (ts.isConditionalExpression(node)) return first([node.whenTrue, node.whenFalse], source);
  if (ts.isIdentifier(node)) return named(node, source);
  if (ts.isCallExpression(node)) return called(node, source);
  if (ts.isElementAccessExpression(node) || ts.isPropertyAccessExpression(node)) return member(node.expression, source) ?? null;
  return node.getText();
}

const first = (nodes: readonly ts.Node[], source: Source): string | null =>
  nodes.map((node) => foreignPart(node, source)).find((part) => part !== null) ?? null;

function named(node: ts.Identifier, source: Source): string | null {
  const initializer = source.constants.get(node.text) ?? within(node);
  if (initializer !== undefined) return foreignPart(initializer, source);
  const from = source.imports.get(node.text);
  const other = from === undefined ? undefined : all.get(from.file);
  const there = from === undefined ? undefined : other?.constants.get(from.name);
  if (other !== undefined && there !== undefined) return foreignPart(there, other);
  return parameterOf(node, source);
}

/** A constant of the function in which the name is used. */
function within(node: ts.Identifier): ts.Expression | undefined {
  for (let scope: ts.Node | undefined = node.parent; scope !== undefined; scope = scope.parent) {
    if (!ts.isBlock(scope)) continue;
    for (const statement of scope.statements) {
      if (!ts.isVariableStatement(statement) || (statement.declarationList.flags & ts.NodeFlags.Const) === 0) continue;
      const found = statement.declarationList.declarations.find(({ name }) => ts.isIdentifier(name) && name.text === node.text);
      if (found?.initializer !== undefined) return found.initializer;
    }
  }
  return undefined;
}

/** A parameter is as good as what every call in the same file hands over for it; a function that others may call is not followed. */
function parameterOf(node: ts.Identifier, source: Source): string | null {
  for (let scope: ts.Node | undefined = node.parent; scope !== undefined; scope = scope.parent) {
    if (!ts.isFunctionDeclaration(scope) && !ts.isArrowFunction(scope)) continue;
    const at = scope.parameters.findIndex(({ name }) => ts.isIdentifier(name) && name.text === node.text);
    if (at < 0) continue;
    const holder = ts.isFunctionDeclaration(scope) ? scope : scope.parent;
    const name = 'name' in holder && holder.name !== undefined ? (holder.name as ts.Node).getText() : '';
    const isExported = /^export\b/.test((ts.isFunctionDeclaration(scope) ? scope : holder.parent.parent).getText());
    if (isExported || name === '') return node.getText();
    const initial = scope.parameters[at]?.initializer;
    const given = callsOf(name, source.tree).map((call) => call.arguments[at] ?? initial);
    return first(
      given.filter((one) => one !== undefined),
      source,
    );
  }
  return node.getText();
}

function callsOf(name: string, tree: ts.Node): ts.CallExpression[] {
  const found: ts.CallExpression[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === name) found.push(node);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

/** A function of the same file that puts a text together, or one of the plain ones of texts and lists. */
function called(node: ts.CallExpression, source: Source): string | null {
  const { expression } = node;
  if (ts.isPropertyAccessExpression(expression) && ['replace', 'replaceAll', 'join', 'trim'].includes(expression.name.text))
    return foreignPart(expression.expression, source) ?? first(node.arguments, source);
  if (!ts.isIdentifier(expression)) return node.getText();
  const made = source.constants.get(expression.text);
  if (made !== undefined && ts.isArrowFunction(made) && !ts.isBlock(made.body)) return foreignPart(made.body, source);
  return node.getText();
}

/** A constant object or list, of which all parts are constants. */
function member(node: ts.Node, source: Source): string | null {
  const object = ts.isIdentifier(node) ? source.constants.get(node.text) : undefined;
  const bare = object !== undefined && (ts.isAsExpression(object) || ts.isSatisfiesExpression(object)) ? object.expression : object;
  if (bare === undefined || !ts.isObjectLiteralExpression(bare)) return node.getText();
  return first(
    bare.properties.map((one) => (ts.isPropertyAssignment(one) ? one.initializer : one)),
    source,
  );
}

/** Every `x.query(…)` of a source with the text it is given. */
function queriesOf(source: Source): ts.Expression[] {
  const found: ts.Expression[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression) && node.expression.name.text === 'query') {
      const [given] = node.arguments;
      const text =
        given !== undefined && ts.isObjectLiteralExpression(given)
          ? given.properties.find((one) => ts.isPropertyAssignment(one) && one.name.getText() === 'text')
          : given;
      if (text !== undefined)
        found.push(ts.isPropertyAssignment(text as ts.Node) ? (text as ts.PropertyAssignment).initializer : (text as ts.Expression));
    }
    ts.forEachChild(node, visit);
  };
  visit(source.tree);
  return found;
}

describe('queries', () => {
  beforeAll(load);

  it('the finder tells a constant text from one that is put together from what somebody sent', () => {
    const faultsOf = (text: string): (string | null)[] => {
      const source = read('src/x/store.ts', text);
      return queriesOf(source).map((query) => foreignPart(query, source));
    };
    expect(
      faultsOf("const columns = 'a'; db.query(`SELECT ${columns} FROM b`); db.query({ text: 'SELECT ' + columns, values: [x] });"),
    ).toEqual([null, null]);
    expect(faultsOf('export function f(db, name) { return db.query(`SELECT ${name}`); }')).toEqual(['name']);
    expect(faultsOf('export const f = (db, x) => db.query(`SELECT ${x.name}`);')).toEqual(['x']);
    expect(faultsOf("const f = (db, x) => db.query('SELECT ' + x); f(db, given.text);")).toEqual(['given']);
    expect(faultsOf("let name = 'a'; db.query(name);")).toEqual(['name']);
  });

  it('are texts of the sources alone, with parameters beside them', () => {
    const faults: string[] = [];
    let looked = 0;
    for (const source of all.values()) {
      for (const query of queriesOf(source)) {
        looked += 1;
        const part = foreignPart(query, source);
        if (part !== null) faults.push(`${source.file}: ${part}`);
      }
    }
    expect(looked).toBeGreaterThan(150);
    expect(faults).toEqual([]);
    expect(known.filter(([where]) => !existsSync(join(projectFolder, where)))).toEqual([]);
  });

  it('use none of the ways round parameters that the packages offer', () => {
    const ways = /\b(?:queryRawUnsafe|executeRawUnsafe|Prisma\.raw|escapeLiteral)\b/;
    expect([...all.values()].filter(({ tree }) => ways.test(tree.text)).map(({ file }) => file)).toEqual([]);
  });
});
