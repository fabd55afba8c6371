export * from './length.ts';
export * from './push.ts';
export * from './rigid-tip.ts';
export { type LaidRun, layRun, type Run, type RunBend, type RunJoint, type RunPart } from './run.ts';
export * from './strip.ts';
