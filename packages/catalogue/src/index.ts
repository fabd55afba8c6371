export { catalogue } from './catalogue.ts';
