/** The project's picture, opened once, for the map and for whoever asks it something. */
import type { Finding } from '@crownfall/geometry';
import { describeFinding } from '@crownfall/survey';
import { openImagery, type Picture } from '../map/imagery-tiles.ts';
import type { AppState, Language } from '../state/app-state.ts';
import type { Session } from './session.ts';

export const hasPicture = ({ imagery, imageryPlace }: AppState): boolean => imageryPlace !== null && imagery.length > 0;

/** The picture cannot be laid under a map; its findings say why and what to do. */
class PictureRefused extends Error {
  readonly findings: readonly Finding[];

  constructor(findings: readonly Finding[]) {
    super(findings.map(({ code }) => code).join(', '));
    this.findings = findings;
  }
}

/** Rejects with a `PictureRefused`, or when its file cannot be reached; the next call tries again. */
export function openPicture(session: Session): Promise<Picture> {
  session.picture ??= opened(session).catch((error) => {
    session.picture = null;
    throw error;
  });
  return session.picture;
}

/** Whoever judges what the picture proposes must see it. */
export function showPicture({ store }: Session): void {
  store.change(({ imageryLook }) => ({ imageryLook: { ...imageryLook, shown: true } }));
}

export function failureInWords(error: unknown, language: Language): string {
  if (error instanceof PictureRefused) return error.findings.map((found) => findingInWords(found, language)).join(' ');
  return error instanceof Error ? error.message : String(error);
}

export function findingInWords(finding: Finding, language: Language): string {
  const { what, remedy } = describeFinding(finding, language);
  return `${what}. ${remedy}`;
}

async function opened({ store }: Session): Promise<Picture> {
  const { imagery, imageryPlace } = store.get();
  const [path] = imagery;
  if (imageryPlace === null || path === undefined) throw new Error('The project has no picture.');
  const outcome = await openImagery(imageryPlace, path);
  if (!('picture' in outcome)) throw new PictureRefused(outcome);
  store.change({ openedImagery: outcome.shown });
  return outcome.picture;
}
