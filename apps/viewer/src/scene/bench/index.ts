export type { LabelName, Labels, Placed } from './labels.ts';
export { BenchStage, type Sight } from './stage.ts';
