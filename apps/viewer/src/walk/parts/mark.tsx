/** Line drawings of our own for the buttons. */

const PATHS = {
  back: 'M15 4 7 12l8 8',
  next: 'M9 4l8 8-8 8',
  plus: 'M12 4v16M4 12h16',
  minus: 'M4 12h16',
  more: 'M4 6h16M4 12h16M4 18h16',
  close: 'M5 5l14 14M19 5 5 19',
  here: 'M12 2v4M12 18v4M2 12h4M18 12h4M12 7a5 5 0 1 0 0 10 5 5 0 0 0 0-10z',
  leaf: 'M5 20C5 9 12 4 20 4c0 9-5 15-13 14M5 20c2-5 5-8 9-10',
  flower:
    'M12 9a3 3 0 1 0 0 6 3 3 0 0 0 0-6zM12 9V3.5M14.6 10.5l4.8-2.8M14.6 13.5l4.8 2.8M12 15v5.500M9.400 13.500l-4.800 2.800M9.400 10.500 4.600 7.700',
  frame: 'M4 4h16v16H4zM12 4v16M4 12h16',
  camera: 'M4 8h4l2-3h4l2 3h4v11H4zM12 10a3.500 3.500 0 1 0 0 7 3.500 3.500 0 0 0 0-7z',
  other: 'M12 4a8 8 0 1 0 0 16 8 8 0 0 0 0-16zM12 8v5M12 16v.5',
  tree: 'M12 21v-7M12 14c-5 0-7-2-7-5.500S8 3 12 3s7 2 7 5.500S17 14 12 14z',
  larger: 'M7 14l5 5 5-5M7 10l5-5 5 5',
  sent: 'M4 13l5 5L20 6',
  waiting: 'M12 19V5M6 11l6-6 6 6',
  picture: 'M4 5h16v14H4zM4 16l5-5 4 4 3-3 4 4',
} as const;

export type MarkName = keyof typeof PATHS;

export function Mark({ name }: { readonly name: MarkName }) {
  return (
    <svg className="mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={PATHS[name]} />
    </svg>
  );
}
