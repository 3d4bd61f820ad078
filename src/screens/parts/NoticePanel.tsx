import type { Notice } from '../../contract/notice.ts';
import { causeOf, remedyOf, type NoticeStreak } from '../state/refusalAdvice.ts';
import { EvidenceList } from './EvidenceList.tsx';
import { CautionIcon } from './icons.tsx';

export interface NoticePanelProps {
  /** How the page's tests and readers know it: a problem stops, a notice goes along. */
  readonly role: 'problem' | 'notice';
  readonly notice: Notice;
  readonly streak: NoticeStreak;
  readonly children?: React.ReactNode;
}

/** Cause, then what to do, then what was seen. Help, not an error. */
export function NoticePanel({ role, notice, streak, children }: NoticePanelProps) {
  return (
    <section className="notice" role="alert" data-role={role} data-code={notice.code}>
      <CautionIcon />
      <div>
        <p className="notice-cause">{causeOf(notice)}</p>
        <p className="notice-remedy">{remedyOf(notice, streak)}</p>
        <EvidenceList evidence={notice.evidence} />
        {children}
      </div>
    </section>
  );
}
