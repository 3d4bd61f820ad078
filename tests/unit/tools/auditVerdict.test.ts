import { describe, expect, it } from 'vitest';

import { auditVerdict } from '../../tools/auditVerdict.ts';

const answer = (vulnerabilities: object) =>
  JSON.stringify({ vulnerabilities, metadata: { dependencies: { total: 12 } } });

describe('what the registry says of known weaknesses', () => {
  it('is clean only where it lists none', () => {
    expect(auditVerdict(answer({}))).toEqual({ kind: 'clean', packages: 12 });
    expect(auditVerdict(answer({ tape: { severity: 'low' } })).kind).toBe('clean');
  });

  it('names what is weak', () => {
    const weak = answer({ tape: { severity: 'high' }, chalk: { severity: 'low' } });
    expect(auditVerdict(weak)).toEqual({ kind: 'weak', names: ['tape (high)'] });
  });

  it.each([
    [
      'a registry that does not answer this',
      '{"message":"405 Method Not Allowed - POST https://r.example/x","method":"POST"}',
    ],
    [
      'no network',
      '{"error":{"code":"ENOTFOUND","summary":"request to https://r.example failed"}}',
    ],
    ['an empty answer', '{}'],
    ['no answer', ''],
    ['a broken one', '{"vulnerabilities":'],
  ])('is no pass with %s', (_, printed) => {
    const verdict = auditVerdict(printed);
    expect(verdict.kind).toBe('not-checked');
    expect(JSON.stringify(verdict)).not.toContain('r.example');
  });
});
