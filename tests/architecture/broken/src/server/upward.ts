import { shown } from '../screens/upward.tsx';

export const served = shown;
