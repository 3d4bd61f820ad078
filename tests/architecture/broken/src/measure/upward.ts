import * as cv from '@opencvjs/web';

import { shown } from '../screens/upward.tsx';
import { missing } from './notThere.ts';

export const measured = [cv, shown, missing];
