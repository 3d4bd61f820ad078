import { worked } from '../../workers/upward.ts';
import { served } from '../server/upward.ts';

export const shown = [worked, served];
