export { type Served, type ServedCopy, type ServedWrite, served } from './served.ts';
