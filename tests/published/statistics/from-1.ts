/** Neighbour lists printed with units numbered from 1, as this room counts them: from 0. */
export function from1(lists: readonly (readonly number[])[]): number[][] {
  return lists.map((list) => list.map((unit) => unit - 1));
}
