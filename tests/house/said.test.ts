/** Keeps screens and core from saying a sentence past the catalogue: such a one would stay English in every language. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { expect, test } from 'vitest';
import { GERMAN } from '../../src/core/languages/german.ts';
import { ROOT, trackedFiles } from './tracked-files.ts';

type Node = { readonly type: string } & Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && 'type' in value;

/** The node and all below it; of what `skip` names, nothing. */
function* within(node: unknown, skip: (node: Node) => boolean): Generator<Node> {
  if (Array.isArray(node)) for (const each of node) yield* within(each, skip);
  if (!isNode(node) || skip(node)) return;
  yield node;
  for (const value of Object.values(node)) if (typeof value === 'object') yield* within(value, skip);
}

/** What a person reads or hears of an element, and what is not for people. */
const READ = ['aria-label', 'aria-description', 'aria-roledescription', 'title', 'alt', 'placeholder', 'legend', 'label'];
const UNSEEN = ['className', 'preserveAspectRatio'];

const attributeOf = (node: Node): string =>
  node.type === 'JSXAttribute' && isNode(node.name) ? String((node.name as Node & { name: unknown }).name) : '';

const textOf = (node: unknown): string => (isNode(node) && typeof node.value === 'string' ? node.value : '');

/** Two small letters running: words, and no names of formats. */
const WORD = /\p{Ll}{2}/u;
/** Two words running: a sentence or a part of one. */
const WORDS = /\p{L}{2} \p{Ll}{2}/u;

function textsIn(node: Node): readonly string[] {
  if (node.type === 'JSXText') return WORD.test(textOf(node)) ? [textOf(node).trim()] : [];
  if (READ.includes(attributeOf(node))) return WORD.test(textOf(node.value)) ? [textOf(node.value)] : [];
  // A key of the catalogue, on its way to `t`.
  if (node.type === 'Literal') return WORDS.test(textOf(node)) && !Object.hasOwn(GERMAN, textOf(node)) ? [textOf(node)] : [];
  if (node.type === 'TemplateElement') {
    const { cooked } = node.value as { readonly cooked: string };
    return WORDS.test(cooked) ? [cooked] : [];
  }
  return [];
}

/** What is thrown is for whoever reads the journal; types, imports and the names of styles are for nobody. */
function isUnseen(node: Node): boolean {
  const made = node.type === 'NewExpression' && isNode(node.callee) ? String(node.callee.name) : '';
  if (made.endsWith('Error') || UNSEEN.includes(attributeOf(node)) || attributeOf(node) === 'key') return true;
  return node.type === 'ImportDeclaration' || (node.type.startsWith('TS') && !node.type.endsWith('Expression'));
}

function saidPastTheCatalogue(file: string): readonly string[] {
  const { program } = parseSync(file, readFileSync(join(ROOT, file), 'utf8'));
  return [...within(program, isUnseen)].flatMap(textsIn).map((text) => `${file}: ${text}`);
}

/** Not for people, or the same in every language. */
const ALLOWED = [
  // The names of machines, for the bench.
  ...['eight in a row', 'first six, else nine of ten', 'four of five, sliding', ' in a row, one lift back'],
  // Values that are kept, and keys.
  ...['at home', 'no trial', 'steady ahead', 'a whole number from 1 to '],
  // The heads of a sheet, which are the same in every language.
  ...['hold at, s', 'end at, s', 'why no trial'],
];

test('no screen and nothing in the core says a sentence past the catalogue', () => {
  const files = trackedFiles().filter((file) => /^src\/(?:screens|core)\/.*\.tsx?$/.test(file) && !file.includes('/languages/'));
  const said = files.flatMap(saidPastTheCatalogue);
  expect(said.filter((line) => !ALLOWED.some((allowed) => line.endsWith(`: ${allowed}`)))).toEqual([]);
});
