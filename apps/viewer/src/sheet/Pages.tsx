/** The pages on the desk: only those near what can be seen are drawn. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Verdict } from 'runback';
import type { Page } from 'runback/sheet';
import { store } from '../store/index.ts';
import { watch } from './nearby.ts';
import { clearPage, paperClass, showPage } from './paper.ts';
import type { LineSheet, SheetSet } from './sheets.ts';

function Paper({ page }: { readonly page: Page }) {
  const host = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState(false);
  useEffect(() => watch(host.current!, setNear), []);
  useEffect(() => {
    if (near) showPage(host.current!, page);
    else clearPage(host.current!);
  }, [near, page]);
  return <div ref={host} class={paperClass(page)} />;
}

function PaperList({ pages, of }: { readonly pages: readonly Page[]; readonly of: string }) {
  if (pages.length === 0) return null;
  return (
    <ol class="sheet-pages" aria-label={`Pages of ${of}`}>
      {pages.map((page, i) => (
        <li key={i}>
          <Paper page={page} />
        </li>
      ))}
    </ol>
  );
}

const MARK: Readonly<Record<Verdict, string>> = { pass: '✓', note: '!', fail: '✕' };
const WORD: Readonly<Record<Verdict, string>> = {
  pass: 'passes',
  note: 'passes, with notes',
  fail: 'fails: stamped DO NOT BEND',
};

export function VerdictChip({ worked }: Pick<LineSheet, 'worked'>) {
  const { verdict, centreline } = worked;
  return (
    <span class={`chip verdict-${verdict}`}>
      <span aria-hidden="true">{MARK[verdict]}</span> {centreline === null ? 'cannot exist' : WORD[verdict]}
    </span>
  );
}

function Impossible({ worked, why }: LineSheet) {
  const { id, name } = worked.line;
  return (
    <div class="card sheet-impossible">
      <h3>{name} has no sheet: this line cannot exist.</h3>
      <ul>
        {why.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <button
        type="button"
        class="btn"
        onClick={() => {
          store.chooseLine(id);
          store.setFace('checks');
        }}
      >
        See its checks
      </button>
    </div>
  );
}

function LinePages({ sheet, headed }: { readonly sheet: LineSheet; readonly headed: boolean }) {
  const { worked, pages, why } = sheet;
  return (
    <section class="sheet-line" aria-label={worked.line.name}>
      {headed && (
        <header class="sheet-line-head">
          <h2>{worked.line.name}</h2>
          <VerdictChip worked={worked} />
        </header>
      )}
      {why.length > 0 ? <Impossible {...sheet} /> : <PaperList pages={pages} of={worked.line.name} />}
    </section>
  );
}

export function Pages({ set }: { readonly set: SheetSet }) {
  const all = set.choice.which === 'all';
  const none = set.lines.length > 0 && set.lines.every(({ pages, why }) => pages.length + why.length === 0);
  return (
    <>
      {all && <PaperList pages={set.cover} of="the cover" />}
      {none && <p class="card sheet-none">No page is chosen: tick pages or aids to print.</p>}
      {!none && set.lines.map((sheet) => <LinePages key={sheet.worked.line.id} sheet={sheet} headed={all} />)}
    </>
  );
}
