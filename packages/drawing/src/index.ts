export { layoutFaults, type TextBox, textBoxes } from './boxes.ts';
export { type FitOptions, type Fitted, fitText } from './fit.ts';
export { cleanText, textWidth } from './measure.ts';
export { sheetPages } from './sheet.ts';
export type { SheetOptions } from './sheet-context.ts';
export { CHECK_BAR } from './sheet-foot.ts';
export { renderSvg, type SvgWindow } from './svg.ts';
export type * from './types.ts';
