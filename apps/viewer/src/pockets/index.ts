export { amountText, mlText, type Staying, shownPockets, signScale } from './amounts.ts';
export { type Lies, pourWords, type Stays, stayWords } from './words.ts';
