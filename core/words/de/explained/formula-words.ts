/**
 * The words that stand inside formulas and symbols, as `pull` in V_pull; letters and functions are the same in
 * both languages and stand in `core/words/explained.ts`. One word of English, one word of ours.
 */
export const formulaWords: ReadonlyMap<string, string> = new Map(
  Object.entries({
    after: 'nachher',
    air: 'Luft',
    and: 'und',
    asked: 'gefragt',
    aspect: 'Querschnitt',
    back: 'zurück',
    band: 'Band',
    before: 'vorher',
    best: 'beste',
    boost: 'Ladedruck',
    check: 'Ventil',
    closeness: 'Weganteil',
    delivery: 'Förderung',
    difference: 'Unterschied',
    duty: 'Auslastung',
    effect: 'Wirkung',
    ethanol: 'Ethanol',
    events: 'Ereignisse',
    excess: 'Exzess',
    factor: 'Faktor',
    fallback: 'Rückfall',
    feed: 'Versorgung',
    flash: 'Flamm',
    flow: 'Fluss',
    fluid: 'Fluid',
    from: 'von',
    fuel: 'Kraftstoff',
    full: 'voll',
    half: 'halb',
    high: 'hoch',
    integral: 'Integral',
    knock: 'Klopfen',
    leanest: 'magerste',
    level: 'Stand',
    limit: 'Grenze',
    line: 'Leitung',
    loss: 'Verlust',
    low: 'tief',
    margin: 'Spanne',
    methanol: 'Methanol',
    miss: 'daneben',
    need: 'Bedarf',
    nozzle: 'Düse',
    or: 'oder',
    out: 'hin',
    peak: 'Spitze',
    petrol: 'Benzin',
    points: 'Punkte',
    practice: 'Praxis',
    pull: 'Zug',
    pulls: 'Züge',
    pump: 'Pumpe',
    ratio: 'Anteil',
    refill: 'nach',
    reserve: 'Reserve',
    retarded: 'zurückgenommen',
    rim: 'Felge',
    rise: 'Anstieg',
    scale: 'Skala',
    scatter: 'Streuung',
    sensor: 'Sensor',
    setting: 'Stellung',
    shortfall: 'Mangel',
    share: 'Anteil',
    shown: 'gezeigt',
    sound: 'gezeigt',
    spark: 'Zündung',
    start: 'Beginn',
    sum: 'Summe',
    tank: 'Tank',
    target: 'Ziel',
    threshold: 'Schwelle',
    to: 'bis',
    trim: 'Korrektur',
    used: 'verbraucht',
    value: 'Wert',
    voltage: 'Spannung',
    way: 'Weg',
    width: 'Breite',
  }),
);

/** Formulas and symbols that are more than letters, functions and single words. */
export const formulaPhrases: ReadonlyMap<string, string> = new Map(
  Object.entries({
    'ln(after) - ln(before), levels of a mixed model: ln P = setup + sum c z + pull':
      'ln(nachher) - ln(vorher), Niveaus eines gemischten Modells: ln P = Einstellung + Summe c z + Zug',
    'level = exp(mean of ln P over the pulls) ± t(0.975, nu) u':
      'Niveau = exp(Mittel von ln P über die Züge) ± t(0,975; nu) u',
    'scatter = level sigma; sigma^2 = variance of ln P between pulls of one setup':
      'Streuung = Niveau sigma; sigma^2 = Varianz von ln P zwischen Zügen einer Einstellung',
    'smallest = delta(nu) u, found as proven in 8 of 10 such days':
      'kleinste = delta(nu) u, an 8 von 10 solchen Tagen als belegt gefunden',
    'from F = 0.025 to F = 0.975; F(x) = sum of w N((x - e) / u) over the stories of the day':
      'von F = 0,025 bis F = 0,975; F(x) = Summe von w N((x - e) / u) über die Erklärungen des Tages',
    'F(-margin) and 1 - F(+margin) both under 0.05: two one-sided tests':
      'F(-Spanne) und 1 - F(+Spanne) beide unter 0,05: zwei einseitige Tests',
    'fewest k with power(effect / u(k)) or power of equivalence of 0.8 and more':
      'kleinstes k, mit dem Wirkung / u(k) oder die Gleichheit in 8 von 10 Fällen gesehen wird',
    'moved: |after - before| beyond its threshold and beyond chance, over the band or a third of it':
      'bewegt: |nachher - vorher| über seiner Schwelle und über dem Zufall, im ganzen Band oder einem Drittel davon',
    'dp = f (L/D) rho v^2 / 2; f = 64/Re or 0.3164 Re^-0.25':
      'dp = f (L/D) rho v^2 / 2; f = 64/Re oder 0,3164 Re^-0,25',
    'L = sum w_i L_i, each from its elements': 'L = Summe w_i L_i, je aus den Elementen',
    'L = w_petrol L_petrol + w_ethanol L_ethanol, each from its elements':
      'L = w_Benzin L_Benzin + w_Ethanol L_Ethanol, je aus den Elementen',
    'ethanol by volume': 'Ethanol nach Volumen',
    'table, interpolated': 'Tabelle, interpoliert',
    'sum x_i g_i p_i(T) / p_i(T_flash,i) = 1, less its worst error':
      'Summe x_i g_i p_i(T) / p_i(T_Flamm,i) = 1, weniger den größten Fehler',
    'integral of q(boost(t)) dt = V, boost(t) = start + rise t':
      'Integral von q(Ladedruck(t)) dt = V, Ladedruck(t) = Beginn + Anstieg t',
    'dp = p_pump - loss - check valve - p at the nozzle, all over ambient':
      'dp = p_Pumpe - Verlust - Rückschlagventil - p an der Düse, alles über Umgebung',
    'measured = factor q_model; scatter = standard deviation of measured / fitted':
      'gemessen = Faktor q_Modell; Streuung = Standardabweichung von gemessen / angepasst',
    'boost = min(sound, knock - margin), of those that are known':
      'Ladedruck = min(gezeigt, Klopfen - Spanne), was davon bekannt ist',
    'r = q / q_need, q at full setting and peak boost':
      'r = q / q_Bedarf, q bei voller Stellung und höchstem Ladedruck',
    'miss = mean |q - q_need| / mean q_need, over boost up to peak':
      'daneben = Mittel |q - q_Bedarf| / Mittel q_Bedarf, über den Ladedruck bis zur Spitze',
    'shortfall = sum (q_need - q) / sum q_need, where under-fed below peak':
      'Mangel = Summe (q_Bedarf - q) / Summe q_Bedarf, wo unter der Spitze zu wenig kommt',
    'start and full as set by hand': 'Beginn und Vollpunkt von Hand gesetzt',
    'start, full: by hand': 'Beginn, Vollpunkt: von Hand',
    'd = max over the pull of d_i (p_a + b) / (p_a + b_i) (1 - s)':
      'd = Größtes über den Zug von d_i (p_a + b) / (p_a + b_i) (1 - s)',
    'P = P_target (p_a + b) / (p_a + b_target) x measured effects x (1 + gain of each step)':
      'P = P_Ziel (p_a + b) / (p_a + b_Ziel) x gemessene Wirkungen x (1 + Gewinn je Stufe)',
    'loss = k (lambda_best - lambda)^2,   k = 2.5 to 4':
      'Verlust = k (lambda_beste - lambda)^2,   k = 2,5 bis 4',
    'table x (1 - s);   left alone: lambda / (1 + s)': 'Kennfeld x (1 - s);   unberührt: lambda / (1 + s)',
    't = d^2 rho c / (8 k ln(1 + B) f),   B = c (T - T_s) / h,   f = mean of 1 + 0.3 Re^(1/2) Pr^(1/3)':
      't = d^2 rho c / (8 k ln(1 + B) f),   B = c (T - T_s) / h,   f = Mittel von 1 + 0,3 Re^(1/2) Pr^(1/3)',
    '(m + Iw / r^2) dv/dt = -(a + b v + c v^2 ± (s + t v)), speed trace fitted by least squares, a less t^2 / 4c':
      '(m + Iw / r^2) dv/dt = -(a + b v + c v^2 ± (s + t v)), an den Verlauf der Geschwindigkeit mit kleinsten Quadraten angepasst, a abzüglich t^2 / 4c',
    'u = |dP/d(v, a)| sigma(v, a); sigma as the spline leaves speed and acceleration open':
      'u = |dP/d(v, a)| sigma(v, a); sigma, soweit der Spline Geschwindigkeit und Beschleunigung offenlässt',
    'u^2 = sum (dP/dx u(x))^2 over mass, road load, slope, speed scale':
      'u^2 = Summe (dP/dx u(x))^2 über Masse, Fahrwiderstand, Steigung, Skala der Geschwindigkeit',
    'smoothing spline: sum w (y - s(t))^2 + sum b_j^2 / q_j is least; q_j read from the bends b around':
      'glättender Spline: Summe w (y - s(t))^2 + Summe b_j^2 / q_j ist am kleinsten; q_j aus den Krümmungen b ringsum',
    'd = r / (i i0) without slip;  d = median(v / w) from the log':
      'd = r / (i i0) ohne Schlupf;  d = Median(v / w) aus der Aufzeichnung',
    's = (P_back - P_out) / (2 m g v);  or as wind  w = (P_back - P_out) / (2 rho CdA v^2)':
      's = (P_zurück - P_hin) / (2 m g v);  oder als Wind  w = (P_zurück - P_hin) / (2 rho CdA v^2)',
    'check valve': 'Rückschlagventil',
    'setting that brings nothing': 'Stellung, die nichts bringt',
    'q at peak': 'q an der Spitze',
    'rise in 1 s': 'Anstieg in 1 s',
    'ratio at peak': 'Anteil an der Spitze',
    'd_i, highest logged': 'd_i, höchste der Aufzeichnung',
    'left alone': 'unberührt',
  }),
);
