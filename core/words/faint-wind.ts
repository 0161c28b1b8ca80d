/** Wind that nobody feels (Beaufort 0 ends at 0.3 m/s, rounded up to half a metre); it would be told as 0 or 1 km/h. [m/s] */
export const faintWind = 0.5;
