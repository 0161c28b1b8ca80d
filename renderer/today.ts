/** The day that it is where the reader is, as `2027-03-14`: in universal time an evening in America is tomorrow. */
export function today(): string {
  // Sweden writes days as the standard does.
  return new Intl.DateTimeFormat('sv-SE').format(new Date());
}
