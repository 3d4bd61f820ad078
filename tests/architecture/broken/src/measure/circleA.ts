import { b } from './circleB.ts';

export const a = (): unknown => b;
