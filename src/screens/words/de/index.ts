import { en, type Words } from '../en/index.ts';
import { licences } from './licences.ts';
import { update } from './update.ts';

/** German. */
export const de: Words = {
  ...en,
  update,
  licences,
};
