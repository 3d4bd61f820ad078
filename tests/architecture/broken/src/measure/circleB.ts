import { a } from './circleA.ts';

export const b = (): unknown => a;
