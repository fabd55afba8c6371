export type { Committed } from './draft.tsx';
export {
  AngleInput,
  type AngleInputProps,
  LengthInput,
  type LengthInputProps,
  TextInput,
  type TextInputProps,
} from './inputs.tsx';
export { sayIssues } from './issues.ts';
export { Pick, type PickOption, type PickProps } from './pick.tsx';
export { readAngle, readLength, readText, type WrittenLength, written } from './read.ts';
