export { BenchPicture, type BenchPictureProps } from './BenchPicture.tsx';
