import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSource } from '../source.ts';
import { editJob, type JobEdit } from './edit-job.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../docs/examples/${name}.job.json`, import.meta.url), 'utf8');

/** Lines that came and lines that went, in order. */
function diff(before: string, after: string): { gone: string[]; come: string[] } {
  const [a, b] = [before.split('\n'), after.split('\n')];
  let head = 0;
  while (head < Math.min(a.length, b.length) && a[head] === b[head]) head += 1;
  let tail = 0;
  while (tail < Math.min(a.length, b.length) - head && a.at(-1 - tail) === b.at(-1 - tail)) tail += 1;
  return { gone: a.slice(head, a.length - tail), come: b.slice(head, b.length - tail) };
}

describe('the file of Tender 7', () => {
  const TENDER = example('tender-7/tender-7');
  const change = (...edits: JobEdit[]) => {
    const after = editJob(TENDER, edits);
    expect(readSource(after).ok).toBe(true);
    return diff(TENDER, after);
  };

  it('a point moves, and nothing else in its line', () => {
    expect(change({ path: 'lines[0].points[2].at', value: [92.5, 190, 340] })).toEqual({
      gone: ['        { "at": [90, 190, 340], "radius": 60, "note": "behind no. 2" },'],
      come: ['        { "at": [92.5, 190, 340], "radius": 60, "note": "behind no. 2" },'],
    });
  });

  it('a point is put in like its neighbours', () => {
    const value = { at: [60, 130, 110], radius: 60 };
    expect(change({ path: 'lines[0].points', insert: 2, value })).toEqual({
      gone: [],
      come: ['        { "at": [60, 130, 110], "radius": 60 },'],
    });
    expect(change({ path: 'lines[0].points', insert: 4, value })).toEqual({
      gone: ['        { "at": [430, 250, 440] }'],
      come: ['        { "at": [430, 250, 440] },', '        { "at": [60, 130, 110], "radius": 60 }'],
    });
    expect(change({ path: 'lines[0].points', insert: 0, value }).come).toHaveLength(1);
  });

  it('a point goes, with its comma', () => {
    expect(change({ path: 'lines[2].points[2]', value: undefined })).toEqual({
      gone: ['        { "at": [-440, 420, 632] },'],
      come: [],
    });
    expect(change({ path: 'lines[0].points[3]', value: undefined })).toEqual({
      gone: [
        '        { "at": [90, 190, 340], "radius": 60, "note": "behind no. 2" },',
        '        { "at": [430, 250, 440] }',
      ],
      come: ['        { "at": [90, 190, 340], "radius": 60, "note": "behind no. 2" }'],
    });
  });

  it('a key goes from its line, another is added to it', () => {
    expect(change({ path: 'lines[0].points[1].radius', value: undefined }).come).toEqual([
      '        { "at": [60, 130, 110] },',
    ]);
    expect(change({ path: 'lines[0].points[3].note', value: 'in the "bracket"' }).come).toEqual([
      String.raw`        { "at": [430, 250, 440], "note": "in the \"bracket\"" }`,
    ]);
    expect(change({ path: 'lines[4].endA.sleeve.length', value: 6.5 }).come).toEqual([
      '                "nut": { "length": 16, "bore": 8.4, "acrossFlats": 17 }, "sleeve": { "length": 6.5 } },',
    ]);
    expect(change({ path: 'lines[4].endA.spare', value: 10 }).come).toEqual([
      '                "nut": { "length": 16, "bore": 8.4, "acrossFlats": 17 }, "sleeve": { "length": 6 }, "spare": 10 },',
    ]);
  });

  it('objects on the way are made', () => {
    expect(change({ path: 'lines[0].clearance.to.sump', value: 4 })).toEqual({
      gone: ['      "clips": [85, 290, 400, 670]'],
      come: ['      "clips": [85, 290, 400, 670],', '      "clearance": { "to": { "sump": 4 } }'],
    });
    expect(change({ path: 'lines[7].clips', insert: 0, value: 85 }).come[0]).toContain(
      '"offset": 0, "clips": [85] }',
    );
  });

  it('a list stays on its line', () => {
    expect(change({ path: 'lines[0].clips', insert: 1, value: 150 }).come).toEqual([
      '      "clips": [85, 150, 290, 400, 670]',
    ]);
    expect(change({ path: 'lines[0].clips[3]', value: undefined }).come).toEqual([
      '      "clips": [85, 290, 400]',
    ]);
    expect(change({ path: 'lines[0].clips[0]', value: undefined }).come).toEqual([
      '      "clips": [290, 400, 670]',
    ]);
    expect(change({ path: 'lines[0].clips[0]', move: 3 }).come).toEqual([
      '      "clips": [290, 400, 670, 85]',
    ]);
  });

  it('a line is removed whole; what is written above it stays', () => {
    const { gone, come } = change({ path: 'lines[7]', value: undefined });
    expect(gone).toHaveLength(3);
    expect(come[0]).toBe('    }');
    expect(come[1]).toMatch(/^ {4}\/\/ The opposite hand/);
  });

  it('a line is written over several lines like the others', () => {
    const value = {
      id: 'tell-tale',
      tube: 'ss-12x1',
      bender: 'bench',
      points: [{ at: [0, 0, 700] }, { at: [0, 0, 600], radius: 36 }, { at: [100, 0, 600] }],
      endA: { fitting: 'plain' },
    };
    expect(change({ path: 'lines', insert: 8, value }).come.slice(1)).toEqual([
      '    {',
      '      "id": "tell-tale",',
      '      "tube": "ss-12x1",',
      '      "bender": "bench",',
      '      "points": [',
      '        { "at": [0, 0, 700] },',
      '        { "at": [0, 0, 600], "radius": 36 },',
      '        { "at": [100, 0, 600] }',
      '      ],',
      '      "endA": { "fitting": "plain" }',
      '    }',
    ]);
  });

  it('a die takes its comments along, inside and behind', () => {
    const text = editJob(TENDER, [
      { path: 'benders.vice.dies', insert: 0, value: { od: 6, radius: 20 } },
      { path: 'benders.vice.dies[1]', move: 0 },
    ]);
    expect(text).toContain(
      [
        '        { "od": 4.76, "radius": 20, "minStraight": 18, "minTail": 25, "maxAngle": 180,',
        '          "springBack": { "factor": 1.015, "fixed": 0.5 },',
        '          "markOffset": 2 },    // pencil mark 2 before the bend begins: where the edge of this tool\'s hook stands',
        '        { "od": 6, "radius": 20 }',
        '      ],',
      ].join('\n'),
    );
  });

  it('moving there and back gives the file again', () => {
    for (const [path, back] of [
      ['lines[1]', 'lines[3]'],
      ['lines[0].points[3]', 'lines[0].points[1]'],
      ['lines[6].points[4]', 'lines[6].points[0]'],
      ['surroundings[5]', 'surroundings[12]'],
      ['lines[4].clips[9]', 'lines[4].clips[4]'],
    ] as const) {
      const [from, to] = [path, back].map((p) => Number(/\[(\d+)\]$/.exec(p)![1])) as [number, number];
      const there = editJob(TENDER, [{ path, move: to }]);
      expect(there).not.toBe(TENDER);
      expect(editJob(there, [{ path: back, move: from }])).toBe(TENDER);
    }
  });

  it('putting in and taking out gives the file again', () => {
    for (const path of ['lines', 'surroundings', 'lines[0].points', 'lines[0].clips', 'benders.bench.dies'])
      for (const index of [0, 1, 2]) {
        const there = editJob(TENDER, [{ path, insert: index, value: { at: [1, 2, 3] } }]);
        expect(editJob(there, [{ path: `${path}[${index}]`, value: undefined }])).toBe(TENDER);
      }
  });

  it('a value that is there already is left as it is written', () => {
    const inch = example('inch/pump-set');
    expect(editJob(inch, [{ path: 'lines[0].clips', value: [4, '8 1/2', 15, 24, `2' 8"`] }])).toBe(inch);
    const text = '{ "a": 1.50, // as read\n "b": { /* none */ } }';
    expect(
      editJob(text, [
        { path: 'a', value: 1.5 },
        { path: 'b', value: {} },
      ]),
    ).toBe(text);
  });
});

describe('layouts', () => {
  const rows: readonly (readonly [string, string, JobEdit, string])[] = [
    ['an empty object', '{}', { path: 'a', value: 1 }, '{ "a": 1 }'],
    ['an empty list', '{ "a": [] }', { path: 'a', insert: 0, value: 1 }, '{ "a": [1] }'],
    [
      'an empty list, an object',
      '{\n  "a": []\n}',
      { path: 'a', insert: 0, value: { b: 1 } },
      '{\n  "a": [\n    { "b": 1 }\n  ]\n}',
    ],
    [
      'an empty list with a comment',
      '{\n  "a": [\n    // none yet\n  ]\n}',
      { path: 'a', insert: 0, value: 1 },
      '{\n  "a": [\n    // none yet\n    1\n  ]\n}',
    ],
    [
      'an empty list with a comment in it',
      '[/* none */]',
      { path: '', insert: 0, value: 1 },
      '[/* none */ 1]',
    ],
    ['the last of a list', '{ "a": [1] }', { path: 'a[0]', value: undefined }, '{ "a": [] }'],
    [
      'the last of a list, by lines',
      '{ "a": [\n  1,\n] }',
      { path: 'a[0]', value: undefined },
      '{ "a": [] }',
    ],
    ['the last key', '{ "a": 1 }', { path: 'a', value: undefined }, '{}'],
    ['trailing comma kept', '[\n  1,\n  2,\n]', { path: '', insert: 2, value: 3 }, '[\n  1,\n  2,\n  3,\n]'],
    ['trailing comma kept in a line', '[1, 2, ]', { path: '', insert: 2, value: 3 }, '[1, 2, 3, ]'],
    [
      'trailing comma kept when the last goes',
      '[\n  1,\n  2,\n]',
      { path: '[1]', value: undefined },
      '[\n  1,\n]',
    ],
    ['no trailing comma left', '[\n  1,\n  2\n]', { path: '[1]', value: undefined }, '[\n  1\n]'],
    [
      'a comment behind goes along',
      '[\n  1, // one\n  2 // two\n]',
      { path: '[0]', move: 1 },
      '[\n  2, // two\n  1 // one\n]',
    ],
    ['a comment behind goes', '[\n  1, // one\n  2\n]', { path: '[0]', value: undefined }, '[\n  2\n]'],
    [
      'a comment above stays',
      '[\n  // one\n  1,\n  2\n]',
      { path: '[0]', value: undefined },
      '[\n  // one\n  2\n]',
    ],
    [
      'blank lines stay',
      '[\n  1,\n\n  2,\n\n  3\n]',
      { path: '[1]', value: undefined },
      '[\n  1,\n\n\n  3\n]',
    ],
    [
      'between a comment behind and one above',
      '[\n  1, // one\n\n  // two:\n  2\n]',
      { path: '', insert: 1, value: 9 },
      '[\n  1, // one\n  9,\n\n  // two:\n  2\n]',
    ],
    [
      'first, under the comment of the bracket',
      '[ // all\n  // one:\n  1\n]',
      { path: '', insert: 0, value: 9 },
      '[ // all\n  9,\n  // one:\n  1\n]',
    ],
    [
      'at the end, behind a comment',
      '[\n  1 // one\n]',
      { path: '', insert: 1, value: 9 },
      '[\n  1, // one\n  9\n]',
    ],
    [
      'a comment in a line belongs to what follows',
      '[1, /* two */ 2]',
      { path: '[0]', value: undefined },
      '[/* two */ 2]',
    ],
    [
      'the end of a line with a comment',
      '[1, 2 // two\n]',
      { path: '', insert: 2, value: 3 },
      '[1, 2, // two\n3\n]',
    ],
    ['commas in front', '[ 1\n, 2\n, 3 ]', { path: '[1]', value: undefined }, '[ 1\n, 3 ]'],
    [
      'without spaces',
      '{"a":1,"b":[1,2]}',
      { path: 'c.d', value: [{ e: 1 }] },
      '{"a":1,"b":[1,2],"c":{"d":[{"e":1}]}}',
    ],
    ['tight braces', '{"a": 1, "b": 2}', { path: 'b', value: { c: 1 } }, '{"a": 1, "b": {"c": 1}}'],
    [
      'tabs',
      '{\n\t"a": {\n\t\t"b": 1\n\t}\n}',
      { path: 'a.c', value: 2 },
      '{\n\t"a": {\n\t\t"b": 1,\n\t\t"c": 2\n\t}\n}',
    ],
    [
      'line ends of Windows',
      '{\r\n  "a": 1,\r\n  "b": 2\r\n}',
      { path: 'a', value: undefined },
      '{\r\n  "b": 2\r\n}',
    ],
    [
      'line ends of Windows, one more',
      '{\r\n  "a": 1\r\n}',
      { path: 'b', value: 2 },
      '{\r\n  "a": 1,\r\n  "b": 2\r\n}',
    ],
    ['the mark of Unicode', '\uFEFF[1]', { path: '[0]', value: 2 }, '\uFEFF[2]'],
    [
      'the whole job',
      '// mine\n{ "a": 1 } // end',
      { path: '', value: { b: 2 } },
      '// mine\n{ "b": 2 } // end',
    ],
    [
      'keys with dots',
      '{ "a.b": { "12.5": 1 } }',
      { path: '["a.b"]["12.5"]', value: 2 },
      '{ "a.b": { "12.5": 2 } }',
    ],
    ['a key that is not there', '{ "a": 1 }', { path: 'b.c', value: undefined }, '{ "a": 1 }'],
    ['a list that is not there', '{ "a": 1 }', { path: 'b', insert: 0, value: 5 }, '{ "a": 1, "b": [5] }'],
    [
      'a line comment moved among others',
      '[\n  1, 2, // two\n  3\n]',
      { path: '[1]', move: 0 },
      '[\n  2, // two\n  1,\n  3\n]',
    ],
    [
      'what is not defined is not there',
      '{ "a": 1 }',
      { path: 'a', value: { b: undefined, c: 1 } },
      '{ "a": { "c": 1 } }',
    ],
    [
      'several lines stay several',
      '{\n  "a": {\n    "b": 1\n  }\n}',
      { path: 'a', value: { b: 2, c: [1, 2] } },
      '{\n  "a": {\n    "b": 2,\n    "c": [1, 2]\n  }\n}',
    ],
  ];

  it.each(rows)('%s', (_, text, edit, wanted) => {
    expect(editJob(text, [edit])).toBe(wanted);
  });
});

describe('what cannot be done', () => {
  const TEXT = '{ "a": [1, { "b": 2 }], "n": null }';
  const wrong: readonly (readonly [string, JobEdit])[] = [
    ['an element beyond the list', { path: 'a[2]', value: 1 }],
    ['an element beyond the list, on the way', { path: 'a[2].b', value: 1 }],
    ['an element beyond the list, to remove', { path: 'a[2]', value: undefined }],
    ['a key in a number', { path: 'a[0].b', value: 1 }],
    ['a key in a number, to remove', { path: 'a[0].b', value: undefined }],
    ['a key in null', { path: 'n.b', value: 1 }],
    ['a key in a list', { path: 'a.b', value: 1 }],
    ['an element of an object', { path: 'a[1][0]', value: 1 }],
    ['an element of a list that is missing', { path: 'c[0]', value: 1 }],
    ['putting in beyond the end', { path: 'a', insert: 3, value: 1 }],
    ['putting in before the beginning', { path: 'a', insert: -1, value: 1 }],
    ['putting in between', { path: 'a', insert: 0.5, value: 1 }],
    ['putting into an object', { path: 'a[1]', insert: 0, value: 1 }],
    ['putting into a missing list beyond its end', { path: 'c', insert: 1, value: 1 }],
    ['putting in nothing', { path: 'a', insert: 0, value: undefined }],
    ['moving a key', { path: 'a', move: 0 }],
    ['moving what is not there', { path: 'a[2]', move: 0 }],
    ['moving beyond the end', { path: 'a[0]', move: 2 }],
    ['removing the whole', { path: '', value: undefined }],
    ['no number', { path: 'a[0]', value: Number.NaN }],
    ['a function', { path: 'a[0]', value: { b: () => 1 } }],
    ['no path', { path: 'a[', value: 1 }],
  ];
  it.each(wrong)('%s', (_, edit) => expect(() => editJob(TEXT, [edit])).toThrow(RangeError));

  it.each(['', '{', '{ "a": }', '// nothing', '[1 2]', '['.repeat(5000)])('a text such as %j', (text) =>
    expect(() => editJob(text, [{ path: 'a', value: 1 }])).toThrow(RangeError),
  );
});
