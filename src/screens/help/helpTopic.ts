import type { words } from '../words/words.ts';

/** The things that help is given about. */
export type HelpTopic = keyof typeof words.help.topics;

/** Every topic, in the order of the job. */
export const HELP_TOPICS: readonly HelpTopic[] = [
  'shed',
  'wheel',
  'bench',
  'stand',
  'sight',
  'sweep',
  'reading',
  'weights',
  'proof',
  'byEye',
];

const OF_WHEEL_SCREEN: Readonly<Record<string, HelpTopic>> = {
  bench: 'bench',
  sight: 'sight',
  reading: 'reading',
  weights: 'weights',
  lead: 'weights',
  proof: 'proof',
  'by-eye': 'byEye',
};

const OF_SCREEN: Readonly<Record<string, HelpTopic>> = {
  sweep: 'sweep',
  'film-setup': 'bench',
  stand: 'stand',
  practice: 'sight',
};

/** What the help is about on the screen at an address; null where every topic is offered. */
export function helpTopicOf(path: string): HelpTopic | null {
  const [first, second, third] = path.split('/').filter((part) => part !== '');
  if (first === undefined) return 'shed';
  if (first === 'wheel' && second !== undefined) {
    return third === undefined ? 'wheel' : (OF_WHEEL_SCREEN[third] ?? null);
  }
  return OF_SCREEN[first] ?? null;
}
