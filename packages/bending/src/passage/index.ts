export * from './length.ts';
export * from './push.ts';
export * from './rigid-tip.ts';
export {
  type LaidRun,
  layRun,
  mouthOf,
  type Run,
  type RunBend,
  type RunJoint,
  type RunPart,
  type RunWidth,
  runWidths,
} from './run.ts';
export * from './strip.ts';
