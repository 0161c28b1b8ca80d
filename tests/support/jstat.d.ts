/** The few functions of jstat that serve as a second opinion; the package brings no types. */
declare module 'jstat' {
  const jStat: {
    studentt: { cdf(x: number, degrees: number): number };
    centralF: { cdf(x: number, top: number, bottom: number): number };
    chisquare: { cdf(x: number, degrees: number): number };
    normal: { cdf(x: number, mean: number, deviation: number): number };
  };
  export default jStat;
}
