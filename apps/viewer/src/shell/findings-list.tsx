/** What is known to be wrong, mended or assumed in the data; it belongs beside the figures, not in a log. Each leads to its place. */
import type { Finding } from '@crownfall/geometry';
import { describeFinding } from '@crownfall/survey';
import { Button } from 'react-aria-components';
import type { Words } from '../language/words.ts';
import type { Project, SpokenGroup } from '../project/project.ts';
import { placeOfFinding, showFinding } from '../session/finding-place.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import type { Language } from '../state/app-state.ts';

type Group = Project['findings'][number];
const NONE: Project['findings'] = [];

export function FindingsList() {
  const groups = useApp((state) => state.project?.findings ?? NONE);
  const words = useWords();
  return (
    <details className="folded findings">
      <summary>{words.findings.title(counts(groups, words) || words.findings.none)}</summary>
      {groups.map((group, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: groups have no id and come anew with every reckoning
        <GroupSection key={i} group={group} />
      ))}
    </details>
  );
}

function GroupSection({ group }: { readonly group: Group }) {
  const session = useSession();
  const language = useApp((state) => state.preferences.language);
  const words = useWords();
  const said = spoken(group, language);
  const more = said.findings - said.examples.length;
  return (
    <section>
      <h3>{`${countOf(group, words)}. ${said.effect}`}</h3>
      <ul>
        {said.examples.map(({ where, what, finding }) => (
          <li key={where + what}>
            {finding && placeOfFinding(session, finding) ? (
              <Button
                className="place-button"
                aria-label={words.findings.show(`${where}: ${what}`)}
                onPress={() => showFinding(session, finding)}
              >
                {where}
              </Button>
            ) : (
              <span className="place">{where}</span>
            )}
            <span className="what">{what}</span>
          </li>
        ))}
      </ul>
      {more > 0 ? <p>{words.findings.more(more)}</p> : null}
      <p className="remedy">{said.examples[0]?.remedy}</p>
    </section>
  );
}

interface SaidGroup extends Pick<SpokenGroup, 'findings' | 'effect'> {
  readonly examples: readonly (SpokenGroup['examples'][number] & { readonly finding?: Finding })[];
}

/** The server's groups are spoken already; the others are values. */
function spoken(group: Group, language: Language): SaidGroup {
  if (!('occurrences' in group)) return group;
  const examples = group.examples.map((finding) => ({ ...describeFinding(finding, language), finding }));
  return { findings: group.findings, effect: examples[0]?.effect ?? '', examples };
}

function countOf({ severity, findings }: Group, words: Words): string {
  const { errors, warnings, notes } = words.findings;
  return { error: errors, warning: warnings, note: notes }[severity](findings);
}

function counts(groups: readonly Group[], words: Words): string {
  const { errors, warnings, notes } = words.findings;
  const said = { error: errors, warning: warnings, note: notes };
  return (['error', 'warning', 'note'] as const)
    .flatMap((severity) => {
      const count = groups.filter((each) => each.severity === severity).reduce((sum, each) => sum + each.findings, 0);
      return count === 0 ? [] : [said[severity](count)];
    })
    .join(', ');
}
