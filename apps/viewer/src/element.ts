/** Builds page elements: `element('p', { class: 'note' }, 'text')`. Text is always set as text, never as markup. */
type Child = Node | string | null;

export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string | number | boolean>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) made.setAttribute(name, '');
    else if (value !== false) made.setAttribute(name, String(value));
  }
  made.append(...children.filter((child) => child !== null));
  return made;
}
