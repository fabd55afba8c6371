export { AIDS, type Aid, type AidOptions } from './aid-context.ts';
export { aidPages } from './aid-pages.ts';
export * from './bench-words.ts';
export { layoutFaults, type TextBox, textBoxes } from './boxes.ts';
export * from './file-names.ts';
export { type FitOptions, type Fitted, fitText } from './fit.ts';
export type { PaperName } from './frame.ts';
export { cleanText, textWidth } from './measure.ts';
export { type CoverOptions, coverPages } from './page-cover.ts';
export { sheetPages } from './sheet.ts';
export { PAGE_KINDS, type PageKind, type SheetOptions } from './sheet-context.ts';
export { CHECK_BAR } from './sheet-foot.ts';
export { renderSvg, type SvgOptions, type SvgWindow } from './svg.ts';
export type * from './types.ts';
export {
  cautionsOf,
  degrees as degreeWords,
  height as heightWords,
  length as tapeWords,
  tubeWords,
} from './words.ts';
