export { BendSteps } from './BendSteps.tsx';
