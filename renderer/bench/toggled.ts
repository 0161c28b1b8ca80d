/** A list with a member taken out, or added where it was not in. */
export function withToggled(list: readonly string[], member: string): readonly string[] {
  return list.includes(member) ? list.filter((one) => one !== member) : [...list, member];
}
