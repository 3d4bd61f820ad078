import { measured } from '../measure/upward.ts';

export const balanced = measured;
