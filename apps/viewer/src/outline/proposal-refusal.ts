/** Why the picture proposes no outline: what the picture shows, or that it cannot be read. */
import type { SuggestedOutline } from '../map/crown-suggester.ts';

export type ProposalRefusal =
  | Extract<SuggestedOutline, { readonly proposed: false }>['because']
  | { readonly failed: string };
