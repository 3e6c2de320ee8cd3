/** The images of a project, opened one after the other, and what stands in the way of using them. */
import { resolve } from 'node:path';
import { projectFolder } from '@crownfall/exchange/node';
import type { Finding } from '@crownfall/geometry';
import type { BandRole, Imagery } from '@crownfall/imagery';
import { openImageFile } from './image-file.ts';

export interface ImageChoice {
  /** An image in place of the project's own. */
  readonly image?: string;
  readonly crs?: string;
  readonly bands?: readonly BandRole[];
}

export interface OpenImage {
  readonly name: string;
  readonly image: Imagery;
}

/**
 * Calls `use` with each image that can be read and laid over the project, and closes it again. The findings of all images
 * come back; those of an image that cannot be used are among them.
 */
export async function forImages(
  project: string,
  listed: readonly string[],
  choice: ImageChoice,
  use: (open: OpenImage) => Promise<void>,
): Promise<{ readonly used: number; readonly findings: readonly Finding[] }> {
  const folder = await projectFolder(project);
  const paths = choice.image === undefined ? listed.map((path) => located(folder, path)) : [choice.image];
  const findings: Finding[] = [];
  let used = 0;
  for (const path of paths) {
    const file = await openImageFile(path, {
      ...(choice.crs !== undefined && { crs: choice.crs }),
      ...(choice.bands && { roles: choice.bands }),
    });
    try {
      findings.push(...file.findings);
      if (file.image === null || file.findings.some(({ effect }) => effect === 'stops')) continue;
      await use({ name: path, image: file.image });
      used++;
    } finally {
      await file.close();
    }
  }
  return { used, findings };
}

function located(folder: string, path: string): string {
  return /^https?:\/\//.test(path) ? path : resolve(folder, path);
}
