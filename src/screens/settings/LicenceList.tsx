import { useEffect, useState } from 'react';

import type { Outcome } from '../../contract/outcome.ts';
import { loadShippedLicences, type ShippedLicence } from '../../session/shippedLicences.ts';
import { words } from '../words/words.ts';
import './licences.css';

/** Work of others that is part of the app, each with the text of its licence to open. */
export function LicenceList() {
  const [loaded, setLoaded] = useState<Outcome<readonly ShippedLicence[]> | null>(null);
  useEffect(() => {
    let current = true;
    void loadShippedLicences().then((licences) => {
      if (current) setLoaded(licences);
    });
    return () => {
      current = false;
    };
  }, []);
  return (
    <section aria-labelledby="licences-title" aria-busy={loaded === null}>
      <h2 id="licences-title">{words.licences.title}</h2>
      <p>{words.licences.lead}</p>
      {loaded?.ok === false && <p role="alert">{words.licences.unreachable}</p>}
      {loaded?.ok === true && (
        <ul className="licences">
          {loaded.value.map((one) => (
            <li key={`${one.name} ${one.version}`}>
              <LicenceOf {...one} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function LicenceOf({ name, version, licence, text, source }: ShippedLicence) {
  return (
    <details>
      <summary>
        <span className="licence-name">{name}</span> {version} · {licence}
      </summary>
      {source !== null && <p className="licence-source">{words.licences.source(source)}</p>}
      {/* Long and of fixed lines: it scrolls by itself, so a keyboard has to reach it. */}
      <pre tabIndex={0} role="region" aria-label={words.licences.textOf(name)}>
        {text ?? words.licences.publicDomain}
      </pre>
    </details>
  );
}
