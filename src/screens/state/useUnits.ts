import { UNITS, type Units } from '../words/displayUnits.ts';
import { readOneOf, storedValue, usePreference } from './preference.ts';

/** Metric until the person chooses; who had chosen ounces before there were all units keeps them. */
export function useUnits(): [Units, (units: Units) => void] {
  const fallback = storedValue('massUnit') === 'oz' ? 'inch-pound' : 'metric';
  return usePreference<Units>('units', fallback, readOneOf(...UNITS));
}
