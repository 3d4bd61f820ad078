import { en, type Words } from '../en/index.ts';

/** German. */
export const de: Words = {
  ...en,
};
