/** What can be taken away from the present job, for the sheet itself and for the menu. */
import { effect, signal } from '@preact/signals';
import type { WorkedJob } from 'runback';
import { renderSvg } from 'runback/sheet';
import { store } from '../store/index.ts';
import { sheetFonts, showFonts } from './fonts.ts';
import { setNow } from './live.ts';
import { besideJob, coverNames, pdfName, svgNames } from './names.ts';
import { pdfFile } from './pdf-file.ts';
import { printPages } from './print.ts';
import { pagesOf, type SheetSet } from './sheets.ts';
import { type NamedFile, takeFile, takeFiles } from './take.ts';

export interface ExportAction {
  readonly id: 'print' | 'pdf' | 'svg' | 'report' | 'csv' | 'job';
  readonly label: string;
  run(): Promise<void>;
}

/** The action that is at work, so that it is not begun twice. */
export const busy = signal<ExportAction['id'] | null>(null);

/** The present job once it is worked to the end: the cures of what fails are printed too. */
function worked(): Promise<WorkedJob> {
  return new Promise((resolve) => {
    const stop = effect(() => {
      const job = store.worked.value;
      if (!job || store.working.value) return;
      queueMicrotask(() => {
        stop();
        resolve(job);
      });
    });
  });
}

async function worthPrinting(): Promise<SheetSet | null> {
  await worked();
  const set = setNow();
  if (set && pagesOf(set).length > 0) return set;
  const impossible = set?.lines.some(({ why }) => why.length > 0);
  store.say(impossible ? 'This line has no sheet: see why in its checks.' : 'No page is chosen.', 'fault');
  return null;
}

async function print(): Promise<void> {
  const set = await worthPrinting();
  if (!set) return;
  await showFonts();
  printPages(pagesOf(set));
}

async function pdf(): Promise<void> {
  const set = await worthPrinting();
  if (!set) return;
  const { bytes, missing } = await pdfFile(set, await sheetFonts());
  const name = await takeFile({ name: pdfName(set), type: 'application/pdf', content: bytes });
  if (name === null) return;
  const lacking = ` The sheet cannot print ${missing.join(' ')}: boxes stand there.`;
  store.say(`Saved ${name}.${missing.length > 0 ? lacking : ''}`, missing.length > 0 ? 'fault' : 'done');
}

async function svg(): Promise<void> {
  const set = await worthPrinting();
  if (!set) return;
  const pages = pagesOf(set);
  const names = [...coverNames(set), ...set.lines.flatMap((line) => svgNames(set, line))];
  const files = pages.map(
    (page, i): NamedFile => ({ name: names[i]!, type: 'image/svg+xml', content: renderSvg(page, window) }),
  );
  if (await takeFiles(files))
    store.say(files.length === 1 ? `Saved ${names[0]}.` : `Saved ${files.length} pages.`);
}

async function report(): Promise<void> {
  const job = await worked();
  const { report: reportOf } = await import('runback/exchange');
  const content = `${JSON.stringify(reportOf(job), null, 2)}\n`;
  await beside({ name: 'report.json', type: 'application/json', content });
}

async function csv(): Promise<void> {
  const job = await worked();
  const { bendsCsv } = await import('runback/exchange');
  await beside({ name: 'bends.csv', type: 'text/csv', content: bendsCsv(job) });
}

/** Named after the job file. */
async function beside(file: NamedFile): Promise<void> {
  const name = await takeFile({ ...file, name: besideJob(store.name.value, file.name) });
  if (name !== null) store.say(`Saved ${name}.`);
}

/** One at a time; what goes wrong is said. */
function action(id: ExportAction['id'], label: string, run: () => Promise<void>): ExportAction {
  return {
    id,
    label,
    run: async () => {
      if (busy.peek() !== null) return;
      busy.value = id;
      try {
        await run();
      } catch (error) {
        store.say(`Not done: ${error instanceof Error ? error.message : String(error)}.`, 'fault');
      } finally {
        busy.value = null;
      }
    },
  };
}

export const exportActions: readonly ExportAction[] = [
  action('print', 'Print …', print),
  action('pdf', 'Save PDF …', pdf),
  action('svg', 'Pages as SVG …', svg),
  action('report', 'Report, JSON …', report),
  action('csv', 'Bends, CSV …', csv),
  action('job', 'Job file …', () => store.saveAs()),
];
