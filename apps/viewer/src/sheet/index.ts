export { type ExportAction, exportActions } from './actions.ts';
export { SheetFace } from './SheetFace.tsx';
