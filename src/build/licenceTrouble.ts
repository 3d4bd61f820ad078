/** A package whose code is in what is shipped. */
export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  /** SPDX expression as the package states it; empty when it states none. */
  readonly licence: string;
  /** Full text with its copyright lines; null when the package has none. */
  readonly text: string | null;
  /** Where its source is to be had; null when the package does not say. */
  readonly source: string | null;
}

/** Ask for no more than that their notice goes along (SPDX identifiers). */
const PERMISSIVE = new Set([
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'ISC',
  'MIT',
  'Zlib',
]);
/** Give up all rights: there need be no notice. */
const PUBLIC_DOMAIN = new Set(['0BSD', 'CC0-1.0', 'MIT-0', 'Unlicense']);
/**
 * Binds its own files only (MPL-2.0, section 3.3): they are shipped unchanged, with the text and with
 * word of where their source is (section 3.2).
 */
const FILE_COPYLEFT = new Set(['MPL-2.0']);

/** Why a package must not be shipped as it is; null when all is well. */
export function licenceTrouble({ licence, text, source }: ShippedPackage): string | null {
  const choices = licence.replace(/^\((.*)\)$/, '$1').split(' OR ');
  const allowed = choices.filter((choice) => choice.split(' AND ').every(isKnown));
  if (licence === '') return 'states no licence';
  if (allowed.length === 0) return `${licence} is not among the licences that do not bind the app`;
  if (allowed.some((choice) => PUBLIC_DOMAIN.has(choice))) return null;
  if (text === null) return `${licence} wants its text to go along, and there is none`;
  const wantsSource = allowed.every((choice) => FILE_COPYLEFT.has(choice));
  return wantsSource && source === null ? `${licence} wants its source to be named` : null;
}

function isKnown(licence: string): boolean {
  return PERMISSIVE.has(licence) || PUBLIC_DOMAIN.has(licence) || FILE_COPYLEFT.has(licence);
}
