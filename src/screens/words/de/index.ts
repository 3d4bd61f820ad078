import { en, type Words } from '../en/index.ts';
import { update } from './update.ts';

/** German. */
export const de: Words = {
  ...en,
  update,
};
