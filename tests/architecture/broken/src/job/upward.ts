import { measured } from '../measure/upward.ts';

export const planned = measured;
