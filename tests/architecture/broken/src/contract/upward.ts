import { measured } from '../measure/upward.ts';

export interface Broken {
  readonly value: typeof measured;
}
