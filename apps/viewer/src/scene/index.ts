export { createScene } from './create.ts';
export type * from './types.ts';
