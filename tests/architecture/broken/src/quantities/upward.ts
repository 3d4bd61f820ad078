export type { Broken } from '../contract/upward.ts';
