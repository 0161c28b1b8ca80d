/** What the tests use of psychrolib, which brings no types: SI units, temperatures in C, pressures in Pa. */
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetTWetBulbFromHumRatio(dryBulb_C: number, humidityRatio: number, pressure: number): number;
  };
  export default psychrolib;
}
