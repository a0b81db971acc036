/** Whether the focus has left something for good, or only gone from one thing in it to another. */
export function focusGone({ currentTarget, relatedTarget }: FocusEvent): boolean {
  return !(currentTarget instanceof Node && relatedTarget instanceof Node && currentTarget.contains(relatedTarget))
}
