export { BendsTable } from './bends/BendsTable.tsx';
export { Findings } from './findings/Findings.tsx';
export { LineList, type LineListProps } from './lines/LineList.tsx';
export * from './parts/index.ts';
export { PointsTable } from './points/PointsTable.tsx';
