import { MarkColourSchema, readSetup, TurnSenseSchema } from '../../contract/setup.ts';
import type { AddedWeight, MarkColour, SweepSetup, TurnSense } from '../../contract/setup.ts';
import { formatKnown, parseTyped, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { AMOUNT_FIELDS, NUMBER_FIELDS, type NumberField } from './setupFields.ts';

/** What stands in the form: texts as typed, and which of them the person vouches for. */
export interface SetupDraft {
  readonly texts: Readonly<Record<string, string>>;
  readonly known: readonly string[];
  readonly colour: MarkColour;
  /** Null: not said. */
  readonly turnSense: TurnSense | null;
  readonly label: string;
  /** What went on the wheel since an earlier sweep; empty: the film stands alone. */
  readonly added: readonly AddedWeight[];
  /** What a setup file says of this film's picture alone, and no field asks for. */
  readonly ofFilm: Pick<SweepSetup['sight'], 'edgePoint' | 'tested'>;
  /** Whether the edge is read where it was touched in the film; else the program looks for it. */
  readonly usesEdge: boolean;
}

export const PROPOSED_DRAFT: SetupDraft = {
  texts: Object.fromEntries(NUMBER_FIELDS.map((field) => [field.path, field.proposal])),
  known: [],
  colour: 'white',
  turnSense: null,
  label: '',
  added: [],
  ofFilm: {},
  usesEdge: true,
};

/** The form knows the earlier sweep by its reading alone. */
const EARLIER_SWEEP = 'earlier';

/** The draft as a setup file's JSON; texts that are no number stay texts and will be refused. */
function draftAsJson(draft: SetupDraft): Record<string, unknown> {
  const json: Record<string, unknown> = { format: 'tiltsweep.setup/1' };
  if (draft.label.trim() !== '') json['label'] = draft.label.trim();
  for (const field of NUMBER_FIELDS) {
    const text = draft.texts[field.path] ?? '';
    if (text.trim() === '') continue;
    putAt(json, field.path, parseTyped(text) ?? text);
  }
  putAt(json, 'sight.valveMark.colour', draft.colour);
  const { edgePoint, tested } = draft.ofFilm;
  if (edgePoint !== undefined && draft.usesEdge) putAt(json, 'sight.edgePoint', edgePoint);
  if (tested !== undefined) putAt(json, 'sight.tested', tested);
  if (draft.turnSense !== null) json['turnSense'] = draft.turnSense;
  if (draft.added.length > 0) json['after'] = { sweep: EARLIER_SWEEP, added: draft.added };
  // A group whose fields are all empty must still be there for the check to name the field.
  for (const group of ['wheel', 'stand', 'camera']) json[group] ??= {};
  return json;
}

export type DraftCheck =
  | { readonly ok: true; readonly setup: SweepSetup }
  | { readonly ok: false; readonly problems: Readonly<Record<string, string>> };

/**
 * Checks every field. `readSetup` names only the first wrong value, so each is tried on its own in
 * an otherwise right setup: all that needs a look is then shown at once.
 */
export function checkDraft(draft: SetupDraft, units: Units = 'metric'): DraftCheck {
  const problems: Record<string, string> = {};
  for (const field of NUMBER_FIELDS) {
    const problem = fieldProblem(field, draft.texts[field.path] ?? '', units);
    if (problem !== null) problems[field.path] = problem;
  }
  const whole = readSetup(draftAsJson(draft));
  if (whole.ok && Object.keys(problems).length === 0) return { ok: true, setup: whole.value };
  if (!whole.ok && Object.keys(problems).length === 0) {
    problems[String(whole.failure.evidence['where'])] = words.setup.cannotBeRight;
  }
  return { ok: false, problems };
}

function fieldProblem(field: NumberField, text: string, units: Units): string | null {
  if (text.trim() === '') return field.optional ? null : words.setup.missing;
  const value = parseTyped(text);
  if (value === null) return words.setup.notANumber;
  const json = draftAsJson({
    ...FILLED_DRAFT,
    texts: { ...FILLED_DRAFT.texts, [field.path]: text },
  });
  const checked = readSetup(json);
  return checked.ok ? null : limitWords(String(checked.failure.evidence['problem']), field, units);
}

/** Any right setup will do; optional fields stay empty. */
const FILLED_DRAFT = PROPOSED_DRAFT;

/** The checker says "Expected >=2 but received 1"; a person wants to hear the limit with its unit. */
function limitWords(problem: string, { quantity }: NumberField, units: Units): string {
  const found = /Expected ([<>])=(-?[\d.]+)/.exec(problem);
  if (found === null) return words.setup.cannotBeRight;
  const limit = formatKnown(quantity, Number(found[2]), units);
  return found[1] === '>' ? words.setup.tooSmall(limit) : words.setup.tooLarge(limit);
}

/** What a refused setup file is told to have wrong, in the form's own words. */
export function setupProblemWords(where: string, problem: string, units: Units): string {
  const field = NUMBER_FIELDS.find((one) => one.path === where);
  if (field === undefined) return `${where}: ${problem}`;
  return `${field.name}: ${limitWords(problem, field, units)}`;
}

/** A number of the form as it stands, metric; what is proposed where it is none. */
export function numberIn(draft: SetupDraft, path: string): number {
  return parseTyped(draft.texts[path] ?? '') ?? Number(PROPOSED_DRAFT.texts[path]);
}

/** Paths of assumed values that the grams rest on. */
export function assumedPaths(draft: SetupDraft): readonly string[] {
  return AMOUNT_FIELDS.filter((path) => !draft.known.includes(path));
}

/** Typing over a value vouches for it. */
export function withText(draft: SetupDraft, path: string, text: string): SetupDraft {
  const known = draft.known.includes(path) ? draft.known : [...draft.known, path];
  return { ...draft, texts: { ...draft.texts, [path]: text }, known };
}

export function withKnown(draft: SetupDraft, path: string, isKnown: boolean): SetupDraft {
  const others = draft.known.filter((other) => other !== path);
  return { ...draft, known: isKnown ? [...others, path] : others };
}

/** A setup file's values as a draft, all known, to correct one of them by hand. */
export function draftOf(setup: SweepSetup): SetupDraft {
  const { valveMark, ...ofFilm } = setup.sight;
  const texts: Record<string, string> = {};
  for (const field of NUMBER_FIELDS) {
    const value = valueAt(setup, field.path);
    texts[field.path] = typeof value === 'number' ? String(value) : '';
  }
  return {
    texts,
    known: NUMBER_FIELDS.map((field) => field.path),
    colour: valveMark.colour,
    turnSense: setup.turnSense ?? null,
    label: setup.label ?? '',
    added: setup.after?.added ?? [],
    ofFilm,
    usesEdge: true,
  };
}

/** What was remembered, as far as it still has the right shape. */
export function draftFromStored(stored: unknown): SetupDraft | null {
  if (typeof stored !== 'object' || stored === null) return null;
  const { texts, known, colour, turnSense, label } = stored as Record<string, unknown>;
  if (typeof texts !== 'object' || texts === null || !Array.isArray(known)) return null;
  const kept = Object.fromEntries(
    Object.entries(texts).filter(
      (entry): entry is [string, string] => typeof entry[1] === 'string',
    ),
  );
  return {
    texts: { ...PROPOSED_DRAFT.texts, ...kept },
    known: known.filter((path): path is string => typeof path === 'string'),
    colour: MarkColourSchema.options.find((option) => option === colour) ?? PROPOSED_DRAFT.colour,
    turnSense: TurnSenseSchema.options.find((option) => option === turnSense) ?? null,
    label: typeof label === 'string' ? label : '',
    // Of that film alone.
    added: [],
    ofFilm: {},
    usesEdge: true,
  };
}

function putAt(target: Record<string, unknown>, path: string, value: unknown): void {
  const steps = path.split('.');
  const last = steps.pop()!;
  let place = target;
  for (const step of steps) {
    place[step] ??= {};
    place = place[step] as Record<string, unknown>;
  }
  place[last] = value;
}

function valueAt(source: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (place, step) => (place as Record<string, unknown> | undefined)?.[step],
      source,
    );
}
