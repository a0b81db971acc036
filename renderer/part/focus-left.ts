/** Whether the focus has left what opens over the page, its button included, so that it closes: gone elsewhere, or nowhere at all. */

/** `box` is null where it is not drawn any more. */
export function focusLeft(
  { relatedTarget }: Pick<FocusEvent, 'relatedTarget'>,
  box: Pick<Node, 'contains'> | null,
): boolean {
  return !(relatedTarget instanceof Node) || box?.contains(relatedTarget) !== true
}
