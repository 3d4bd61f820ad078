import { started } from '../src/session/upward.ts';

export const worked = started;
