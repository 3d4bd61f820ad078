/** What a registry says of the known weaknesses of a dependency tree. */
export type AuditVerdict =
  | { readonly kind: 'clean'; readonly packages: number }
  | { readonly kind: 'weak'; readonly names: readonly string[] }
  /** The registry was not there, or does not answer that question: nothing is known. */
  | { readonly kind: 'not-checked'; readonly why: string };

/** From these on a weakness counts; below them are remarks. */
const COUNTED = new Set(['moderate', 'high', 'critical']);

interface AuditAnswer {
  readonly message?: string;
  readonly error?: { readonly summary?: string; readonly code?: string };
  readonly metadata?: { readonly dependencies?: { readonly total?: number } };
  readonly vulnerabilities?: Readonly<Record<string, { readonly severity: string }>>;
}

/** Reads what `npm audit --json` prints. Only an answer that lists weaknesses, be it none, is one. */
export function auditVerdict(printed: string): AuditVerdict {
  let answer: AuditAnswer;
  try {
    answer = JSON.parse(printed) as AuditAnswer;
  } catch {
    return { kind: 'not-checked', why: 'no answer' };
  }
  const packages = answer.metadata?.dependencies?.total;
  if (answer.vulnerabilities === undefined || packages === undefined) {
    const why = answer.message ?? answer.error?.summary ?? answer.error?.code ?? 'no answer';
    // Which registry it was is nobody's business.
    return { kind: 'not-checked', why: why.replace(/ - .*| to https?:.*/s, '') };
  }
  const names = Object.entries(answer.vulnerabilities)
    .filter(([, { severity }]) => COUNTED.has(severity))
    .map(([name, { severity }]) => `${name} (${severity})`);
  return names.length > 0 ? { kind: 'weak', names } : { kind: 'clean', packages };
}
