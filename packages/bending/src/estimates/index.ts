export * from './code-wall.ts';
export * from './drain.ts';
export * from './flow.ts';
export * from './friction.ts';
export * from './mass.ts';
export * from './proof.ts';
export { CAUTION, type Estimate } from './say.ts';
export * from './strength.ts';
export * from './thermal.ts';
