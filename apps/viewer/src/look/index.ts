export { Look } from './Look.tsx';
