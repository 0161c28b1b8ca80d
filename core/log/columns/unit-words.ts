/** A unit as found in a file: its id in core/units, and whether the text says which pressure is meant. */
export type FoundUnit = {
  readonly unit: string;
  readonly reference: 'absolute' | 'gauge' | null;
};

/** Spellings of each unit, lower case without blanks, points, degree signs, brackets and plurals of `sec`. */
const spellings: Readonly<Record<string, string>> = {
  s: 's sec secs second seconds sek sekunde sekunden segundo segundos seg secondes seconde sekunder',
  ms: 'ms msec msecs millisecond milliseconds millis milisegundos millisekunden millisecondes mseg millisekunder',
  us: 'us usec usecs microsecond microseconds micros mikrosekunden microsegundos microsecondes',
  ns: 'ns nsec nanosecond nanoseconds nanosekunden nanosegundos nanosecondes',
  min: 'min mins minute minutes minuten minuto minutos minuter',
  h: 'h hr hrs hour hours stunde stunden hora horas heure heures timmar timme',
  rpm: 'rpm rev/min revs/min r/min 1/min min-1 min^-1 /min u/min upm umin umdr/min tr/min t/min trs/min tours/min rev/m giri/min vuelta/min vueltas/min revolutions/min cpm obr/min omw/min toeren/min varv/min varv/minut v/min revolutions/minute',
  rps: 'rps 1/s s-1 s^-1 rev/s revs/s rev/sec r/s u/s u/sek ups tr/s hz',
  krpm: 'krpm x1000rpm rpmx1000 rpm*1000 1000rpm 1000/min 1000u/min x1000/min rpm/1000 x1000',
  'rad/s': 'rad/s rads rad/sec rads-1',
  'm/s':
    'm/s m/sec mps meter/s ms-1 meters/second metres/second meter/second metre/second meters/sec meter/sec meter/sekunde metros/segundo metres/seconde m/sek',
  'km/h':
    'km/h kmh kph kmph km/hr km/hour kmh-1 km/std km/u km/uur km/godz km/ora kilometers/hour kilometres/hour kilometer/hour kilometre/hour kilometers/h kilometer/h kilometer/stunde km/stunde kilometros/hora kilometres/heure km/tim km/t',
  mph: 'mph mi/h miles/h mile/h miles/hour mi/hr mile/hour',
  kn: 'kn kt kts knots knot',
  'm/s2': 'm/s2 m/s^2 m/s/s m/sec2 m/s**2 ms-2',
  g0: 'g gs g0 gee',
  m: 'm meter meters metre metres metros',
  km: 'km kilometer kilometers kilometre kilometres',
  mi: 'mi mile miles',
  ft: 'ft feet foot',
  mm: 'mm',
  cm: 'cm',
  Pa: 'pa pascal',
  hPa: 'hpa',
  kPa: 'kpa',
  MPa: 'mpa',
  mbar: 'mbar millibar mb',
  bar: 'bar bars',
  psi: 'psi lb/in2 lbs/in2 lbf/in2 lb/sqin lbs/sqin psi/in2',
  inHg: 'inhg "hg in-hg inchhg',
  mmHg: 'mmhg torr',
  atm: 'atm',
  'kgf/cm2': 'kgf/cm2 kg/cm2 kgf/cm^2 kg/cm^2 at kp/cm2',
  K: 'k kelvin',
  C: 'c degc cel celsius grad/c gradc centigrade degcelsius degreescelsius',
  F: 'f degf fahrenheit degfahrenheit degreesfahrenheit',
  deg: 'deg degree degrees deg/btdc btdc degbtdc degbtc degca ca ca/btdc degcrk degcrank crk btc grad degkw gradkw kwvot vot pms degpms degvil vil bpmi grados degres crankdeg degatdc grader',
  rad: 'rad radian radians',
  '%': '% percent pct perc prozent porciento pourcent per/cent %duty dc% %dc %rel %vol vol% procent',
  lambda: 'lambda la lam λ',
  AFR: 'afr a/f a:f air/fuel air:fuel',
  'g/s': 'g/s g/sec gps gm/s gr/s grams/s gs-1',
  'kg/h': 'kg/h kg/hr kgh kg/std',
  'kg/s': 'kg/s',
  'g/min': 'g/min gm/min',
  'kg/min': 'kg/min',
  'lb/min': 'lb/min lbs/min lb/m ppm',
  'lb/h': 'lb/h lb/hr lbs/h lbs/hr pph',
  'mL/min': 'ml/min',
  'cc/min': 'cc/min ccm ccm/min cm3/min',
  'L/min': 'l/min lpm liter/min litre/min',
  'L/h': 'l/h lph l/hr l/std liter/h litre/h',
  'gal/h': 'gal/h gph gal/hr',
  V: 'v volt volts vdc',
  mV: 'mv millivolt millivolts',
  kW: 'kw/engine kilowatt kilowatts kw wkw',
  W: 'w watt watts',
  hp: 'hp bhp whp rwhp horsepower',
  PS: 'ps cv ch wps pferdestarken hk hastkrafter',
  Nm: 'nm n*m n-m n·m newtonmeter newtonmeters newton-meter nxm',
  'lb ft':
    'lbft lb-ft lb*ft ft-lb ftlb ft-lbs ftlbs lbs-ft lbf-ft lb·ft ft·lb ft-lbf lbfft ft/lb lb/ft ftlbf',
  'kgf m': 'kgfm kgm mkg kgf-m kg-m kgf*m kg*m m-kg mkgf m-kgf mkp kpm',
  N: 'n newton newtons',
  L: 'l liter litre liters litres',
  mL: 'ml milliliter millilitre cc',
  kg: 'kg',
  '': '- -- none n/a # count counts bit bits bool boolean flag on/off raw ratio no. nr x / unitless index enum state text string',
  '1': '0-1 0..1 1 frac fraction',
};

const byWord = new Map<string, string>();
for (const [id, words] of Object.entries(spellings)) {
  for (const word of words.split(' ')) if (!byWord.has(word)) byWord.set(word, id);
}

/** No unit is written in more characters. */
const longestUnit = 60;

/**
 * The unit that a text names, or null where it names none that we know. Blanks, points, degree signs and
 * brackets don't count; `psig`, `bar abs`, `kPa (rel.)` also say which pressure is meant.
 */
export function parseUnit(text: string): FoundUnit | null {
  if (text.length > longestUnit) return null;
  let t = text
    // The ordinal sign stands in for the degree sign on some keyboards; it would turn into an o.
    .replace(/[°º˚]/g, '')
    // Degree and letter may be one sign, as ℃.
    .normalize('NFKC')
    .replaceAll('°', '')
    .replaceAll('\u2212', '-')
    .toLowerCase()
    .replaceAll('μ', 'u')
    .replaceAll('µ', 'u')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[[\](){}<>]/g, ' ')
    .replace(/\s+(?:per|pro|por|par)\s+/g, '/')
    .trim();
  let reference: FoundUnit['reference'] = null;
  const said =
    /[\s_.,-]*\b(abs|absolute?|absolut|a|absoluta|absolue)\.?$|[\s_.,-]*\b(gauge|gage|g|rel|relative?|relativ|relativa|uberdruck|ueberdruck|manometrica)\.?$/.exec(
      t,
    );
  if (said && said.index > 0) {
    const before = t.slice(0, said.index).replace(/[\s.]/g, '');
    if (isPressure(byWord.get(before))) {
      reference = said[1] === undefined ? 'gauge' : 'absolute';
      t = before;
    }
  }
  // A dot at mid height multiplies, the Japanese one too: kgf·m.
  t = t.replace(/[\s.·・⋅∙•]/g, '');
  if (t === '' && text.trim() !== '') return /°|º/.test(text) ? { unit: 'deg', reference: null } : null;
  // Kurbelwinkel is written °KW; without the sign KW is kilowatts.
  if (t === 'kw' && /[°º˚]/.test(text)) return { unit: 'deg', reference: null };
  const direct = byWord.get(t);
  if (direct !== undefined) return { unit: direct, reference };
  const suffixed = /^(psi|bar|kpa|mbar|hpa|inhg|mmhg|atm)-?(a|g|abs|gauge|rel)$/.exec(t);
  if (suffixed?.[1] !== undefined && suffixed[2] !== undefined)
    return {
      unit: byWord.get(suffixed[1]) ?? '',
      reference: suffixed[2].startsWith('a') ? 'absolute' : 'gauge',
    };
  return null;
}

/**
 * Whether a text is a known unit per second that is no unit of its own, as `%/s` or `kPa/s`: what it stands beside
 * is how fast something changes.
 */
export function isRateUnit(text: string): boolean {
  if (text.length > longestUnit) return false;
  const rate = /^(.+?)\s*(?:\/\s*(?:s|sec|sek|ms)|per second|pro sekunde)\s*$/i.exec(text.trim());
  if (!rate?.[1] || parseUnit(text) !== null) return false;
  const unit = parseUnit(rate[1]);
  return unit !== null && unit.unit !== '';
}

const pressures = new Set([
  'Pa',
  'hPa',
  'kPa',
  'MPa',
  'mbar',
  'bar',
  'psi',
  'inHg',
  'mmHg',
  'atm',
  'kgf/cm2',
]);

function isPressure(id: string | undefined): boolean {
  return id !== undefined && pressures.has(id);
}
