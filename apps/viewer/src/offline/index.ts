export { registerOffline } from './register.ts';
