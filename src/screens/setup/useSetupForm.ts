import { useState, type FormEvent } from 'react';

import type { SweepSetup } from '../../contract/setup.ts';
import type { Units } from '../words/numbers.ts';
import { checkDraft, withText, type SetupDraft } from './setupDraft.ts';

export interface SetupFormProps {
  readonly draft: SetupDraft;
  /** Of a film: the reading of the sweep before it; null until it is chosen. */
  readonly earlier: string | null;
  readonly onSubmit: (setup: SweepSetup, draft: SetupDraft, deviceId?: string) => void;
}

export interface SetupForm {
  readonly draft: SetupDraft;
  /** What is wrong, by the path of the field. */
  readonly problems: Readonly<Record<string, string>>;
  /** Weights were added since an earlier sweep whose reading has not been chosen. */
  readonly lacksEarlier: boolean;
  /** Takes a typed text; what was said about that field is settled by it. */
  readonly type: (path: string, text: string) => void;
  readonly change: (changed: (before: SetupDraft) => SetupDraft) => void;
  readonly submit: (event: FormEvent<HTMLFormElement>) => void;
}

/** What stands in the form, and what is wrong with it once it was handed in. */
export function useSetupForm(
  props: SetupFormProps,
  deviceId: string | undefined,
  units: Units,
): SetupForm {
  const { earlier, onSubmit } = props;
  const [draft, change] = useState(props.draft);
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [wasLacking, setLacking] = useState(false);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const checked = checkDraft(draft, units);
    const lacks = draft.added.length > 0 && earlier === null;
    setLacking(lacks);
    if (checked.ok) {
      if (!lacks) onSubmit(checked.setup, draft, deviceId);
      return;
    }
    setProblems(checked.problems);
    const [first] = Object.keys(checked.problems);
    const input = first === undefined ? null : event.currentTarget.elements.namedItem(first);
    if (input instanceof HTMLElement) input.focus();
  };
  const type = (path: string, text: string) => {
    change((before) => withText(before, path, text));
    setProblems((before) => Object.fromEntries(Object.entries(before).filter(([p]) => p !== path)));
  };
  return { draft, problems, lacksEarlier: wasLacking && earlier === null, type, change, submit };
}
