import { worked } from '../../workers/upward.ts';

export const shown = worked;
