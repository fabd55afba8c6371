/** Every TypeScript block in the documentation and every @example in the code is run, and its `// => value` lines are held. */
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const folder = join(import.meta.dirname, '.examples', String(process.pid));

interface Example {
  readonly place: string;
  readonly code: string;
}

function filesUnder(top: string, wanted: RegExp): string[] {
  return readdirSync(top).flatMap((name) => {
    const path = join(top, name);
    if (name === 'node_modules' || name === 'dist' || name.startsWith('.')) return [];
    if (statSync(path).isDirectory()) return filesUnder(path, wanted);
    return wanted.test(name) ? [path] : [];
  });
}

const lineOf = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;

function fences(path: string): Example[] {
  const text = readFileSync(path, 'utf8');
  return [...text.matchAll(/^```ts\n([\s\S]*?)^```/gm)].map((match) => ({
    place: `${relative(root, path)}:${lineOf(text, match.index)}`,
    code: match[1]!,
  }));
}

function docExamples(path: string): Example[] {
  const text = readFileSync(path, 'utf8');
  return [...text.matchAll(/^[ \t]*\* @example\n([\s\S]*?)(?=^[ \t]*(?:\*\/|\* @))/gm)].map((match) => ({
    place: `${relative(root, path)}:${lineOf(text, match.index)}`,
    code: match[1]!
      .replace(/^[ \t]*\* ?/gm, '')
      .replace(/^```(?:ts)?$/gm, '')
      .replaceAll('*\\/', '*/'),
  }));
}

/** `expression; // => value` becomes a pair that is compared. */
function runnable(code: string): { module: string; pairs: number } {
  const file = ts.createSourceFile('example.ts', code, ts.ScriptTarget.Latest, true);
  let out = '';
  let pairs = 0;
  for (const statement of file.statements) {
    const text = code.slice(statement.pos, statement.end);
    const after = code.slice(statement.end).match(/^[ \t]*\/\/ => (.+)/);
    if (ts.isExpressionStatement(statement) && after) {
      pairs += 1;
      out += `\nheld.push([(${statement.expression.getText(file)}), (${after[1]})]);`;
    } else out += text;
  }
  return { module: `export const held: [unknown, unknown][] = [];\n${out}\n`, pairs };
}

const examples = [
  ...[
    join(root, 'README.md'),
    ...filesUnder(join(root, 'docs'), /\.md$/),
    ...filesUnder(join(root, 'packages'), /README\.md$/),
  ].flatMap(fences),
  ...filesUnder(join(root, 'packages'), /(?<!\.test)\.ts$/).flatMap(docExamples),
];

describe('documentation examples', () => {
  beforeAll(() => mkdirSync(folder, { recursive: true }));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('every room has one that is run', () => {
    for (const room of readdirSync(join(root, 'packages')))
      expect(
        examples.filter(({ place }) => place.startsWith(`packages/${room}/README.md`)).length,
        room,
      ).toBeGreaterThan(0);
  });

  for (const [i, { place, code }] of examples.entries())
    it(place, async () => {
      const { module, pairs } = runnable(code);
      expect(pairs, 'an example ends in a line `expression; // => value`').toBeGreaterThan(0);
      const path = join(folder, `example-${i}.ts`);
      writeFileSync(path, module);
      const { held } = (await import(path)) as { held: [unknown, unknown][] };
      expect(held.length).toBe(pairs);
      for (const [found, said] of held)
        expect(JSON.parse(JSON.stringify(found) ?? 'null')).toEqual(
          JSON.parse(JSON.stringify(said) ?? 'null'),
        );
    });

  it('a false example goes red', () => {
    const { module, pairs } = runnable('const a = 1;\na + 1; // => 3');
    expect(pairs).toBe(1);
    expect(module).toContain('held.push([(a + 1), (3)])');
  });
});
