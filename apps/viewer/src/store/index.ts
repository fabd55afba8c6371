export { startStore, store } from './instance.ts';
export type * from './types.ts';
export { verdictWords } from './verdict-words.ts';
