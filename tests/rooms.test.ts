/** Who may import whom, and how large a file or a function may grow. The faults planted at the end prove the gate. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');

/** Arrows only up this list. `!` marks a room whose types alone may be imported. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  'packages/geometry': [],
  'packages/job': ['@runback/geometry', 'zod', 'jsonc-parser', 'fraction.js'],
  'packages/catalogue': ['@runback/job!'],
  'packages/bending': ['@runback/geometry', '@runback/job'],
  'packages/checks': ['@runback/geometry', '@runback/job', '@runback/bending'],
  'packages/drawing': [
    '@runback/geometry',
    '@runback/job',
    '@runback/bending',
    '@runback/checks!',
    '@svgdotjs/svg.js',
    '@cantoo/pdf-lib',
    'fontkit',
  ],
  'packages/exchange': ['@runback/geometry', '@runback/job', '@runback/bending', '@runback/checks!'],
  'packages/runback': [
    '@runback/geometry',
    '@runback/job',
    '@runback/catalogue',
    '@runback/bending',
    '@runback/checks',
    '@runback/drawing',
    '@runback/exchange',
  ],
  'apps/cli': ['runback', 'node:', 'commander', 'svgdom'],
  'apps/viewer': [
    'runback',
    'three',
    'preact',
    '@preact/signals',
    'comlink',
    'tinykeys',
    'browser-fs-access',
    'idb-keyval',
  ],
};

const SUBPATHS: Readonly<Record<string, readonly string[]>> = {
  runback: ['exchange', 'sheet', 'pdf'],
  '@runback/drawing': ['pdf'],
};
const FILE_MAX = 300;
const FUNCTION_MAX = 60;
const FRONT_DOOR_MAX = 150;

interface Source {
  readonly name: string;
  readonly text: string;
}

interface Import {
  readonly from: string;
  readonly typeOnly: boolean;
}

function typeOnly(node: ts.ImportDeclaration | ts.ExportDeclaration): boolean {
  if (ts.isExportDeclaration(node)) return node.isTypeOnly;
  const clause = node.importClause;
  if (!clause) return false;
  if (clause.isTypeOnly) return true;
  const named = clause.namedBindings;
  return (
    !clause.name &&
    !!named &&
    ts.isNamedImports(named) &&
    named.elements.every((element) => element.isTypeOnly)
  );
}

function importsOf(source: Source): Import[] {
  const file = ts.createSourceFile(source.name, source.text, ts.ScriptTarget.Latest, true);
  const found: Import[] = [];
  const visit = (node: ts.Node): void => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier)
      found.push({ from: (node.moduleSpecifier as ts.StringLiteral).text, typeOnly: typeOnly(node) });
    const dynamic = ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword;
    if (dynamic && node.arguments[0] && ts.isStringLiteral(node.arguments[0]))
      found.push({ from: node.arguments[0].text, typeOnly: false });
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      found.push({ from: (node.argument.literal as ts.StringLiteral).text, typeOnly: true });
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** `@scope/name/sub/path` → package `@scope/name`, sub `sub/path`. */
function split(specifier: string): { name: string; sub: string } {
  const parts = specifier.split('/');
  const take = specifier.startsWith('@') ? 2 : 1;
  return { name: parts.slice(0, take).join('/'), sub: parts.slice(take).join('/') };
}

function importFault(room: string, source: Source, what: Import): string | null {
  const allowed = MAY_IMPORT[room] ?? [];
  const place = `${source.name}: import "${what.from}"`;
  if (what.from.startsWith('.')) {
    const inside = join(source.name, '..', what.from).startsWith(`${room}/`);
    return inside ? null : `${place} leaves its room`;
  }
  if (what.from.startsWith('node:')) return allowed.includes('node:') ? null : `${place}: node: in a package`;
  const { name, sub } = split(what.from);
  const ours = name === 'runback' || name.startsWith('@runback/');
  if (ours && sub !== '' && !SUBPATHS[name]?.includes(sub)) return `${place} reaches into another room`;
  if (allowed.includes(name)) return null;
  if (allowed.includes(`${name}!`)) return what.typeOnly ? null : `${place}: only types may come from there`;
  return `${place} is not in the import map of ${room}`;
}

function undeclared(room: string, sources: readonly Source[], manifest: string): string[] {
  const declared = Object.keys((JSON.parse(manifest) as { dependencies?: object }).dependencies ?? {});
  const used = new Set(sources.flatMap(importsOf).map((i) => i.from));
  return [...used]
    .filter((from) => !from.startsWith('.') && !from.startsWith('node:'))
    .map((from) => split(from).name)
    .filter((name) => !declared.includes(name))
    .map((name) => `${room}/package.json does not declare ${name}`);
}

function cycles(sources: readonly Source[]): string[] {
  const names = new Set(sources.map((s) => s.name));
  const edges = new Map(
    sources.map((s) => [
      s.name,
      importsOf(s)
        .filter((i) => i.from.startsWith('.') && !i.typeOnly)
        .map((i) => join(s.name, '..', i.from))
        .filter((n) => names.has(n)),
    ]),
  );
  const done = new Set<string>();
  const faults: string[] = [];
  const walk = (name: string, trail: readonly string[]): void => {
    if (trail.includes(name))
      faults.push(`cycle: ${[...trail.slice(trail.indexOf(name)), name].join(' → ')}`);
    if (done.has(name) || trail.includes(name)) return;
    for (const next of edges.get(name) ?? []) walk(next, [...trail, name]);
    done.add(name);
  };
  for (const name of names) walk(name, []);
  return faults;
}

const lineCount = (text: string): number => text.trimEnd().split('\n').length;

function sizeFaults(source: Source): string[] {
  const isData = /(-data|\/data\/.*)\.ts$/.test(source.name);
  const faults: string[] = [];
  if (!isData && lineCount(source.text) > FILE_MAX)
    faults.push(`${source.name}: ${lineCount(source.text)} lines, at most ${FILE_MAX}`);
  const file = ts.createSourceFile(source.name, source.text, ts.ScriptTarget.Latest, true);
  if (source.name.endsWith('/index.ts') && !file.statements.every(ts.isExportDeclaration))
    faults.push(`${source.name}: an index holds exports only`);
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node) && 'body' in node && node.body) {
      const from = file.getLineAndCharacterOfPosition(node.getStart(file)).line;
      const lines = file.getLineAndCharacterOfPosition(node.end).line - from + 1;
      const place = `${source.name}:${from + 1}`;
      if (lines > FUNCTION_MAX)
        faults.push(`${place}: a function of ${lines} lines, at most ${FUNCTION_MAX}`);
      if (node.parameters.length > 3)
        faults.push(`${place}: ${node.parameters.length} parameters, at most 3`);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return faults;
}

/** Small numbers written out by hand, which belong in the one file of numerical zeros. */
function epsilonFaults(source: Source): string[] {
  if (source.name === 'packages/geometry/src/numeric.ts' || !source.name.startsWith('packages/')) return [];
  const file = ts.createSourceFile(source.name, source.text, ts.ScriptTarget.Latest, true);
  const faults: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isNumericLiteral(node) && /e-/i.test(node.getText(file)))
      faults.push(
        `${source.name}:${file.getLineAndCharacterOfPosition(node.pos).line + 1}: bare ${node.getText(file)}`,
      );
    if (ts.isPropertyAccessExpression(node) && /^Math\.acos$/.test(node.getText(file)))
      faults.push(`${source.name}: Math.acos, use atan2`);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return faults;
}

/** Inside the viewer: `scene/` draws with three on the canvas it is given; everything else knows the page and no three. */
function sceneFaults(source: Source): string[] {
  const inScene = source.name.startsWith('apps/viewer/src/scene/');
  const foreign = importsOf(source).filter(({ from }) =>
    inScene ? /^(preact|@preact)/.test(from) : split(from).name === 'three',
  );
  return foreign.map(({ from }) => `${source.name}: ${from} is not for here`);
}

function sourcesOf(room: string): Source[] {
  const found: Source[] = [];
  const walk = (folder: string): void => {
    for (const entry of readdirSync(folder)) {
      const path = join(folder, entry);
      if (statSync(path).isDirectory()) walk(path);
      else if (/\.tsx?$/.test(entry) && !/\.test\.tsx?$/.test(entry))
        found.push({ name: relative(root, path), text: readFileSync(path, 'utf8') });
    }
  };
  walk(join(root, room, 'src'));
  return found;
}

const roomsOnDisk = ['packages', 'apps'].flatMap((top) =>
  readdirSync(join(root, top)).map((name) => `${top}/${name}`),
);

describe('rooms', () => {
  it('every room on disk is in the import map', () => {
    expect([...roomsOnDisk].sort()).toEqual(Object.keys(MAY_IMPORT).sort());
  });

  for (const room of roomsOnDisk) {
    const sources = sourcesOf(room);
    const manifest = readFileSync(join(root, room, 'package.json'), 'utf8');

    it(`${room} imports only what it may, and declares it`, () => {
      const faults = sources.flatMap((s) => importsOf(s).map((i) => importFault(room, s, i)));
      expect([...faults.filter((f) => f !== null), ...undeclared(room, sources, manifest)]).toEqual([]);
    });
    it(`${room} has no import cycles`, () => expect(cycles(sources)).toEqual([]));
    it(`${room} keeps files and functions small`, () => expect(sources.flatMap(sizeFaults)).toEqual([]));
    it(`${room} has no bare numerical zeros`, () => expect(sources.flatMap(epsilonFaults)).toEqual([]));
    it(`${room} has a README`, () =>
      expect(readFileSync(join(root, room, 'README.md'), 'utf8').length).toBeGreaterThan(200));
  }

  it('the scene alone knows three, and touches nothing of the page', () => {
    const faults = sourcesOf('apps/viewer').flatMap(sceneFaults);
    expect(faults).toEqual([]);
  });

  it('the front door stays small', () => {
    const lines = sourcesOf('packages/runback').reduce((sum, s) => sum + lineCount(s.text), 0);
    expect(lines).toBeLessThanOrEqual(FRONT_DOOR_MAX);
  });

  it('all packages carry one version', () => {
    const versions = roomsOnDisk.map(
      (room) => JSON.parse(readFileSync(join(root, room, 'package.json'), 'utf8')).version as string,
    );
    expect(new Set(versions).size).toBe(1);
  });
});

describe('the gate sees a planted fault', () => {
  const plant = (text: string, name = 'packages/geometry/src/planted.ts'): Source => ({ name, text });
  const fault = (text: string, room = 'packages/geometry'): (string | null)[] => {
    const source = plant(text, `${room}/src/planted.ts`);
    return importsOf(source).map((i) => importFault(room, source, i));
  };

  it('an import against the arrows', () =>
    expect(fault(`import { x } from '@runback/job';`)[0]).toContain('not in the import map'));
  it('a deep import', () =>
    expect(fault(`import { x } from '@runback/geometry/src/vec.ts';`, 'packages/job')[0]).toContain(
      'reaches into',
    ));
  it('a relative path out of the room', () =>
    expect(fault(`export * from '../../job/src/units.ts';`)[0]).toContain('leaves its room'));
  it('node: in a package', () =>
    expect(fault(`const fs = await import('node:fs');`)[0]).toContain('node: in a package'));
  it('a value where only types may come', () => {
    expect(fault(`import { workJob } from '@runback/checks';`, 'packages/drawing')[0]).toContain(
      'only types',
    );
    expect(fault(`import type { Finding } from '@runback/checks';`, 'packages/drawing')[0]).toBeNull();
  });
  it('an undeclared dependency', () => {
    const sources = [plant(`import { z } from 'zod';`)];
    expect(undeclared('packages/job', sources, '{"dependencies":{}}')).toEqual([
      'packages/job/package.json does not declare zod',
    ]);
  });
  it('a cycle', () => {
    const a = plant(`import { b } from './b.ts';`, 'packages/geometry/src/a.ts');
    const b = plant(`import { a } from './a.ts';`, 'packages/geometry/src/b.ts');
    expect(cycles([a, b])[0]).toContain('cycle');
  });
  it('a file, a function, a parameter list too long, and code in an index', () => {
    const long = `export function f() {\n${'  g();\n'.repeat(FILE_MAX)}}\n`;
    expect(sizeFaults(plant(long)).length).toBe(2);
    expect(sizeFaults(plant('export const f = (a, b, c, d) => a;')).length).toBe(1);
    expect(sizeFaults(plant('export const x = 1;', 'packages/geometry/src/index.ts')).length).toBe(1);
  });
  it('three outside the scene, preact inside it', () => {
    const three = plant(`import { Scene } from 'three';`, 'apps/viewer/src/words/planted.tsx');
    const preact = plant(`import { h } from 'preact';`, 'apps/viewer/src/scene/planted.ts');
    expect([...sceneFaults(three), ...sceneFaults(preact)]).toHaveLength(2);
  });
  it('a bare epsilon and an acos', () =>
    expect(epsilonFaults(plant('export const near = (a) => Math.acos(a) < 1e-9;')).length).toBe(2));
});
