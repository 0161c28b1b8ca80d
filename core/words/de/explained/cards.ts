/** Names, units in words and ranges on the cards that explain a kind of number. `#` stands for a number. */
export const cardPhrases: ReadonlyMap<string, string> = new Map(
  Object.entries({
    'of each': 'je nach Größe',
    '1 / unit of z': '1 / Einheit von z',
    'of the channel': 'des Kanals',
    'of each input': 'je nach Eingabe',
    'mean wheel power over the band, one per pull': 'mittlere Radleistung über das Band, eine je Zug',
    'intake temperature, manifold pressure, order, direction':
      'Ansauglufttemperatur, Saugrohrdruck, Reihenfolge, Richtung',
    'coefficient, from the pulls and from practice': 'Beiwert, aus den Zügen und der Praxis',
    'standard error: scatter of pulls, nuisances, weather':
      'Standardfehler: Streuung der Züge, Störgrößen, Wetter',
    'standard error: scatter of pulls, nuisances, wandering, weather':
      'Standardfehler: Streuung der Züge, Störgrößen, Wandern, Wetter',
    'chance of a story: which suspects are at work, how calm the day is, how far pulls scatter':
      'Gewicht einer Erklärung: was alles mitwirkt, wie ruhig der Tag ist, wie weit Züge streuen',
    'effect as that story has it': 'Wirkung nach dieser Erklärung',
    'normal distribution function': 'Verteilungsfunktion der Normalverteilung',
    'share of power that counts as equal': 'Anteil der Leistung, der als gleich gilt',
    'path length of the standardised residuals along engine speed':
      'Weglänge der standardisierten Reste über der Motordrehzahl',
    'distribution function of t': 'Verteilungsfunktion von t',
    'standard error with k more pulls on each side': 'Standardfehler mit k weiteren Zügen je Seite',
    'smallest move that matters': 'kleinste Bewegung, auf die es ankommt',
    'standard error of the mean: scatter of pulls over their number':
      'Standardfehler des Mittels: Streuung der Züge durch ihre Zahl',
    'degrees of freedom of the pooled scatter': 'Freiheitsgrade der zusammengefassten Streuung',
    'standard deviation of one pull, pooled over the entries':
      'Standardabweichung eines Zuges, über die Einträge zusammengefasst',
    'shift of noncentral t with power 0.8 at 5 %':
      'Verschiebung der nichtzentralen t-Verteilung bei Trennschärfe 0,8 zu 5 %',
    'no whisker where nothing tells how pulls repeat': 'kein Bereich, wo nichts zeigt, wie Züge streuen',
    'two pulls or more somewhere in the session, or an earlier day of the same car':
      'zwei Züge oder mehr irgendwo in der Sitzung, oder ein früherer Tag desselben Autos',
    'with the pulls there are now': 'mit den Zügen, die jetzt da sind',
    'air mass flow': 'Luftmassenstrom',
    'measured mixture': 'gemessenes Gemisch',
    'stoichiometric air per fuel by mass': 'stöchiometrische Luft je Kraftstoff nach Masse',
    'brake-specific fuel consumption': 'spezifischer Kraftstoffverbrauch',
    'road speed while rolling in neutral': 'Geschwindigkeit beim Ausrollen im Leerlauf',
    'mass as driven': 'Masse wie gefahren',
    'inertia of all wheels': 'Trägheit aller Räder',
    'rolling radius': 'Rollradius',
    'force of the slope, told once rolls go both ways':
      'Kraft der Steigung, bekannt, sobald hin und zurück gerollt wird',
    'what steady wind adds by speed, told once rolls go both ways':
      'was steter Wind je Geschwindigkeit dazutut, bekannt, sobald hin und zurück gerollt wird',
    'dry pressure, absolute': 'Druck der trockenen Luft, absolut',
    'air temperature before the engine': 'Lufttemperatur vor dem Motor',
    barometer: 'Luftdruck',
    'standard errors of the spline and how they go together':
      'Standardfehler des Splines und wie sie zusammenhängen',
    'wheel power from speed v and acceleration a': 'Radleistung aus Geschwindigkeit v und Beschleunigung a',
    'input as entered': 'Eingabe wie eingetragen',
    'its uncertainty': 'ihre Unsicherheit',
    'full width at half height of the kernel that the true slope is seen through, mid-pull':
      'volle Breite bei halber Höhe des Fensters, durch das die wahre Steigung gesehen wird, mitten im Zug',
    'engine speed': 'Motordrehzahl',
    'logged road speed': 'aufgezeichnete Geschwindigkeit',
    'tractive force': 'Zugkraft',
    'distance per radian without slip': 'Weg je Radiant ohne Schlupf',
    'gear ratio': 'Übersetzung des Gangs',
    'final drive': 'Achsübersetzung',
    'road speed': 'Geschwindigkeit',
    'barometer, absolute': 'Luftdruck, absolut',
    'ambient temperature': 'Außentemperatur',
    'relative humidity times saturation pressure': 'relative Feuchte mal Sättigungsdruck',
    'road speed, smoothed': 'Geschwindigkeit, geglättet',
    'road load': 'Fahrwiderstand',
    'rise per distance': 'Anstieg je Weg',
    'wheel power': 'Radleistung',
    'drivetrain efficiency, wheel over crank power': 'Wirkungsgrad des Antriebs, Rad- durch Motorleistung',
    'inertia of the engine': 'Trägheit des Motors',
    'rolling coefficient': 'Rollwiderstandsbeiwert',
    'air density': 'Luftdichte',
    'drag area': 'Luftwiderstandsfläche',
    'wheel power each way, worked out as level': 'Radleistung je Richtung, wie in der Ebene gerechnet',
    'air density times drag area': 'Luftdichte mal Luftwiderstandsfläche',
    'rim diameter': 'Felgendurchmesser',
    'nominal section width': 'Nennbreite des Reifens',
    'section height over width': 'Höhe durch Breite des Reifens',
    'one gear, one car; practice: # ± # % per K, drift of ± # % a pull, on a calm day ± # %, the first pull ± # %':
      'ein Gang, ein Auto; Praxis: # ± # % je K, Drift von ± # % je Zug, an einem ruhigen Tag ± # %, der erste Zug ± # %',
    'two pulls a side and up, or one where the session tells how pulls repeat':
      'zwei Züge je Seite und mehr, oder einer, wo die Sitzung zeigt, wie Züge streuen',
    'comes before gain and loss: the margin is what the user calls equal':
      'geht Gewinn und Verlust vor: die Spanne ist, was Sie gleich nennen',
    'the whole true curve lies inside with 95 % confidence; a little wide with few pulls':
      'die ganze wahre Kurve liegt mit 95 % Vertrauen darin; bei wenigen Zügen etwas zu weit',
    'were the effect truly as large as it looks now':
      'wäre die Wirkung wirklich so groß, wie sie jetzt aussieht',
    'each channel with its own threshold': 'jeder Kanal mit eigener Schwelle',
    'full load, boosted petrol; level good to some 10 %':
      'Volllast, aufgeladener Benziner; Höhe auf etwa 10 % genau',
    'level road, still air or both directions together; speed loss of 8 m/s or more':
      'ebene Straße, Windstille oder beide Richtungen zusammen; Verlust an Geschwindigkeit 8 m/s oder mehr',
    '15 to 35 C, 90 to 105 kPa dry (absolute), factor 0.97 to 1.03':
      '15 bis 35 °C, 90 bis 105 kPa trocken (absolut), Faktor 0,97 bis 1,03',
    '15 to 35 C, 90 to 110 kPa dry (absolute), factor 0.93 to 1.07':
      '15 bis 35 °C, 90 bis 110 kPa trocken (absolut), Faktor 0,93 bis 1,07',
    'not known to us': 'uns nicht bekannt',
    'noise and smoothing of this pull alone; what repeats differ by is seen in the pulls themselves':
      'nur Rauschen und Glättung dieses Zuges; wie Wiederholungen streuen, zeigen die Züge selbst',
    'common to all pulls of the car: it cancels between two entries':
      'allen Zügen des Autos gemeinsam: hebt sich zwischen zwei Einträgen auf',
    'narrower where the pull bends, wider where it is straight; what is narrower still is flattened':
      'schmaler, wo der Zug sich krümmt, breiter, wo er gerade ist; was noch schmaler ist, wird geglättet',
    'both speeds logged, clutch closed, no wheel spin':
      'beide Drehzahlen aufgezeichnet, Kupplung geschlossen, keine durchdrehenden Räder',
    'one gear, clutch closed, no wheel spin': 'ein Gang, Kupplung geschlossen, keine durchdrehenden Räder',
    '-20 to 60 C, 50 to 110 kPa absolute': '-20 bis 60 °C, 50 bis 110 kPa absolut',
    'one gear, clutch closed, still air, 0.15 s and more after full throttle; 1.5 % RMS at 20 Hz on generated drives':
      'ein Gang, Kupplung geschlossen, Windstille, ab 0,15 s nach Vollgas; 1,5 % RMS bei 20 Hz auf erzeugten Fahrten',
    'as wheel power; the efficiency is rarely known better than 3 %':
      'wie die Radleistung; der Wirkungsgrad ist selten besser als auf 3 % bekannt',
    'still air, dry level or evenly sloping road':
      'Windstille, trockene Straße, eben oder gleichmäßig geneigt',
    'one stretch, one gear, one tune; wind steady over both ways':
      'eine Strecke, ein Gang, eine Abstimmung; Wind auf beiden Wegen gleich',
    'metric car tyres, worn or soft ones 1 to 2 % smaller':
      'metrische Pkw-Reifen, abgefahrene oder weiche 1 bis 2 % kleiner',
  }),
);
