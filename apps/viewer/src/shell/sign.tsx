/** The few signs of the page, drawn for it on a square of 20. */

const PATHS = {
  undo: 'M7.5 5 3.5 9l4 4M4 9h8a4 4 0 0 1 0 8H9',
  redo: 'M12.5 5l4 4-4 4M16 9H8a4 4 0 0 0 0 8h3',
  more: 'M4 6h12M4 10h12M4 14h12',
  close: 'M5 5l10 10M15 5 5 15',
} as const;

export function Sign({ name }: { readonly name: keyof typeof PATHS }) {
  return (
    <svg className="sign" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
      <path
        d={PATHS[name]}
        fill="none"
        stroke="currentColor"
        strokeWidth="1.7"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}
