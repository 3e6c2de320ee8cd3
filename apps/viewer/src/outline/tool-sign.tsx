/** A sign for each way of drawing a crown: what is measured is what is drawn. */
import type { ReactNode } from 'react';
import type { Tool } from './sketch.ts';

const SIGNS: Readonly<Record<Tool | 'copy' | 'picture', ReactNode>> = {
  polygon: (
    <>
      <path d="M5 8 11 3l8 4 1 8-7 5-8-4z" />
      <circle cx="5" cy="8" r="1.6" />
      <circle cx="11" cy="3" r="1.6" />
      <circle cx="19" cy="7" r="1.6" />
      <circle cx="20" cy="15" r="1.6" />
      <circle cx="13" cy="20" r="1.6" />
      <circle cx="5" cy="16" r="1.6" />
    </>
  ),
  spread: (
    <>
      <circle cx="12" cy="12" r="9" />
      <path d="M3 12h18" strokeDasharray="2 2" />
      <circle cx="12" cy="12" r="1.6" fill="currentColor" />
    </>
  ),
  diameters: (
    <>
      <ellipse cx="12" cy="12" rx="9.5" ry="6.5" transform="rotate(-25 12 12)" />
      <path d="M3.5 16 20.5 8M9.2 6.2l5.6 11.6" strokeDasharray="2 2" />
    </>
  ),
  radii: (
    <>
      <path d="M12 3c4 0 8 2 8 8s-3 8-7 9-9-3-9-8 4-9 8-9z" />
      <path d="M12 12V3M12 12l8-1M12 12l1 8M12 12l-8 0" strokeDasharray="2 2" />
    </>
  ),
  picture: (
    <>
      <path d="M3 4h18v16H3z" />
      <path d="M8 9.5 12 7l4.5 2 1 4.5-3.5 3-5-1z" strokeDasharray="2 2" />
    </>
  ),
  copy: (
    <>
      <circle cx="9" cy="9" r="6" strokeDasharray="2 2" />
      <circle cx="15" cy="15" r="6" />
    </>
  ),
};

export function ToolSign({ tool }: { readonly tool: Tool | 'copy' | 'picture' }) {
  return (
    <svg
      className="sign"
      viewBox="0 0 24 24"
      width="24"
      height="24"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.4"
      aria-hidden="true"
    >
      {SIGNS[tool]}
    </svg>
  );
}
