/** What a source says besides its citation, part by part as `; ` separates them. Titles and authors stay. */
export const sourcePhrases: ReadonlyMap<string, string> = new Map(
  Object.entries({
    'common practice': 'gängige Praxis',
    'common practice, no source': 'gängige Praxis, ohne Quelle',
    'from memory': 'aus dem Gedächtnis',
    'MacKay, Neural Computation 4 (1992) 415; Eilers and Marx, Statistical Science 11 (1996) 89 (from memory)':
      'MacKay, Neural Computation 4 (1992) 415; Eilers und Marx, Statistical Science 11 (1996) 89 (aus dem Gedächtnis)',
    'ideal gases': 'ideale Gase',
    'dry air alone, as it alone burns fuel': 'nur die trockene Luft, denn nur sie verbrennt Kraftstoff',
    'first law, Raoult’s law': 'erster Hauptsatz, Raoultsches Gesetz',
    'adiabatic saturation as in ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 33':
      'adiabate Sättigung wie in ASHRAE Handbook Fundamentals 2017, Kap. 1, Gl. 33',
    'd-squared law, Turns, An Introduction to Combustion, ch. 3':
      'd²-Gesetz, Turns, An Introduction to Combustion, Kap. 3',
    'slip: Ranz and Marshall (1952), Schiller and Naumann (1933)':
      'Schlupf: Ranz und Marshall (1952), Schiller und Naumann (1933)',
    'spread after Rosin and Rammler (from memory)': 'Streuung nach Rosin und Rammler (aus dem Gedächtnis)',
    'definition of isentropic efficiency': 'Definition des isentropen Wirkungsgrads',
    'definition of heat-exchanger effectiveness': 'Definition des Wirkungsgrads eines Wärmeübertragers',
    'held against NACA E-244: gains of 0.53 to 1.45 times ours':
      'gehalten gegen NACA E-244: Gewinne vom 0,53- bis 1,45-fachen der hiesigen',
    'restricted maximum likelihood: Searle, Casella and McCulloch, Variance Components (1992), ch. 6':
      'restringierte Maximum-Likelihood: Searle, Casella und McCulloch, Variance Components (1992), Kap. 6',
    'stories of the day weighed as in Hoeting et al., Statistical Science 14 (1999) 382':
      'mögliche Verläufe des Tages gewogen wie in Hoeting et al., Statistical Science 14 (1999) 382',
    'path length: Telschow and Schwartzman, J. Statist. Plann. Inference 216 (2022) 70':
      'Weglänge: Telschow und Schwartzman, J. Statist. Plann. Inference 216 (2022) 70',
    'JCGM 100:2008, 4.2 and G.3': 'JCGM 100:2008, 4.2 und G.3',
    'noncentral t': 'nichtzentrale t-Verteilung',
    'CRC Handbook and reference equations of state for the alcohols':
      'CRC Handbook und Referenz-Zustandsgleichungen der Alkohole',
    'element balance with the composition of dry air, ISO 2533 (from memory)':
      'Elementbilanz mit der Zusammensetzung trockener Luft, ISO 2533 (aus dem Gedächtnis)',
    'OIML R 22:1975 (ethanol-water)': 'OIML R 22:1975 (Ethanol-Wasser)',
    'CRC Handbook, 102nd ed., and Melinder (methanol-water)':
      'CRC Handbook, 102. Aufl., und Melinder (Methanol-Wasser)',
    'Kell 1975 (water)': 'Kell 1975 (Wasser)',
    'Active Thermochemical Tables 1.112, liquid at 25 C':
      'Active Thermochemical Tables 1.112, flüssig bei 25 °C',
    'van Laar constants from memory': 'Konstanten nach van Laar aus dem Gedächtnis',
    'Grunberg and Nissan 1949, fitted to the CRC Handbook, 102nd ed., and Melinder':
      'Grunberg und Nissan 1949, angepasst an das CRC Handbook, 102. Aufl., und Melinder',
    'pure flash points IEC 60079-20-1': 'Flammpunkte der reinen Stoffe IEC 60079-20-1',
    'continuity, rigid line': 'Kontinuität, steife Leitung',
    'a soft hose adds some tenths of a second (common practice)':
      'ein weicher Schlauch kostet einige Zehntelsekunden mehr (gängige Praxis)',
    'logged flow, integrated over the pulls that count':
      'aufgezeichneter Durchfluss, integriert über die Züge, die zählen',
    'planned flow, integrated over the pull of the setup':
      'geplanter Durchfluss, integriert über den Zug des Aufbaus',
    'a minute: at peak flow': 'eine Minute: beim größten Durchfluss',
    'refills as noted': 'nachgefüllt wie notiert',
    'V_pull from logged flow': 'V_Zug aus aufgezeichnetem Durchfluss',
    'V_pull from planned flow': 'V_Zug aus geplantem Durchfluss',
    '15 % over a tank: common practice': '15 % auf einen Tank: gängige Praxis',
    'definition of brake-specific consumption': 'Definition des spezifischen Verbrauchs',
    '0.30 to 0.36 kg/kWh at full load: common practice': '0,30 bis 0,36 kg/kWh bei Volllast: gängige Praxis',
    'ideal gas and definition of volumetric efficiency, Heywood, Internal Combustion Engine Fundamentals, ch. 2 (from memory)':
      'ideales Gas und Definition des Liefergrads, Heywood, Internal Combustion Engine Fundamentals, Kap. 2 (aus dem Gedächtnis)',
    'rated flow of the injectors and the orifice equation':
      'Nenndurchfluss der Einspritzventile und die Blendengleichung',
    'orifice equation': 'Blendengleichung',
    'orifice equation, Cengel and Cimbala, Fluid Mechanics, ch. 8':
      'Blendengleichung, Cengel und Cimbala, Fluid Mechanics, Kap. 8',
    'balance of pressures': 'Bilanz der Drücke',
    'loss: Hagen-Poiseuille and Blasius': 'Verlust: Hagen-Poiseuille und Blasius',
    'pump: its curve and what holds it': 'Pumpe: ihre Kennlinie und was sie hält',
    'weighted least squares over the points': 'gewichtete kleinste Quadrate über die Punkte',
    'uncertainties: JCGM 100:2008': 'Unsicherheiten: JCGM 100:2008',
    'what this engine has shown without fluid, as typed on the setup sheet':
      'was dieser Motor ohne Fluid gezeigt hat, wie im Aufbau eingetragen',
    'margin: common practice': 'Spanne: gängige Praxis',
    'JCGM 100:2008, 5.1.2 for the sum': 'JCGM 100:2008, 5.1.2 für die Summe',
    'the parts: common practice': 'die Teile: gängige Praxis',
    'near 0.335 kg/kWh, 15 % by mass of a mix of 0.93 kg/L':
      'nahe 0,335 kg/kWh, 15 % nach Masse einer Mischung von 0,93 kg/L',
    'ratio: common practice': 'Anteil: gängige Praxis',
    'fuel: as the plan has it': 'Kraftstoff: wie im Plan',
    'q: orifice equation at the pressure that pump, line and check valve leave at peak boost':
      'q: Blendengleichung bei dem Druck, den Pumpe, Leitung und Rückschlagventil beim höchsten Ladedruck lassen',
    'matched within 15 %, much too large from twice: common practice':
      'passend bis 15 % daneben, viel zu groß ab dem Doppelten: gängige Praxis',
    'fuel flow as the plan has it': 'Kraftstofffluss wie im Plan',
    'right within 15 %: common practice': 'richtig bis 15 % daneben: gängige Praxis',
    'flow by the orifice equation at the controller’s setting':
      'Durchfluss nach der Blendengleichung bei der Stellung der Steuerung',
    'need: see there': 'Bedarf: siehe dort',
    'flow when fluid first leaves the nozzle on the pull, over the fuel at that moment':
      'Durchfluss, wenn auf dem Zug das erste Fluid die Düse verlässt, zum Kraftstoff in dem Augenblick',
    'under-fed: more than 15 % below the need (common practice)':
      'zu wenig: mehr als 15 % unter dem Bedarf (gängige Praxis)',
    'set by hand': 'von Hand gesetzt',
    'rounded to the step of the controller where that is known':
      'auf die Stufe der Steuerung gerundet, wo sie bekannt ist',
    'same mean fluid over the ramp': 'im Mittel über die Rampe gleich viel Fluid',
    's_m: common practice': 's_m: gängige Praxis',
    'limit: your limits': 'Grenze: Ihre Grenzen',
    'one event stops, two send back (common practice)':
      'ein Ereignis hält an, zwei führen zurück (gängige Praxis)',
    'limit: your limits, else lambda 0.90 (common practice)':
      'Grenze: Ihre Grenzen, sonst Lambda 0,90 (gängige Praxis)',
    'limit: 85 % of the planned flow (common practice)':
      'Grenze: 85 % des geplanten Durchflusses (gängige Praxis)',
    'limit: 95 % of the pressure at the start of the pull (common practice)':
      'Grenze: 95 % des Drucks am Anfang des Zuges (gängige Praxis)',
    'limit: your limits, else 950 C (common practice)': 'Grenze: Ihre Grenzen, sonst 950 °C (gängige Praxis)',
    'limit: your limits, else 85 % (common practice)': 'Grenze: Ihre Grenzen, sonst 85 % (gängige Praxis)',
    'limit: 90 % of the delivery (common practice)': 'Grenze: 90 % der Förderung (gängige Praxis)',
    'limit: your limits and 95 % of the sensor’s full scale (common practice), the lower':
      'Grenze: Ihre Grenzen und 95 % vom Messende des Sensors (gängige Praxis), das Niedrigere',
    'limit: your limits, else 60 C (common practice)': 'Grenze: Ihre Grenzen, sonst 60 °C (gängige Praxis)',
    'limit: reserve over tank, from the setup': 'Grenze: Reserve durch Tank, aus dem Aufbau',
    'retarded: pulls in which the control took back 0.5 degrees of spark or more, as less is its housekeeping (common practice)':
      'zurückgenommen: Züge, auf denen die Steuerung 0,5 Grad Zündung oder mehr zurücknahm, weniger ist ihr Haushalten (gängige Praxis)',
    'over the counted pulls, where boost is 80 % of the pull’s highest or more (common practice)':
      'über die Züge, die zählen, wo der Ladedruck 80 % des höchsten auf dem Zug erreicht (gängige Praxis)',
    'over the counted pulls (common practice)': 'über die Züge, die zählen (gängige Praxis)',
    'over the counted pulls': 'über die Züge, die zählen',
    'lowest of a pull over that at its start, the worst pull (common practice)':
      'der niedrigste eines Zuges durch den an seinem Anfang, vom schlechtesten Zug (gängige Praxis)',
    'delivery at full boost, from the setup': 'Förderung bei vollem Ladedruck, aus dem Aufbau',
    'without a boost channel the manifold’s less the air’s (common practice)':
      'ohne Kanal für den Ladedruck der Druck im Saugrohr weniger den der Luft (gängige Praxis)',
    'of the last counted pull (common practice)': 'vom letzten Zug, der zählt (gängige Praxis)',
    'value: foretold by the step': 'Wert: von der Stufe vorhergesagt',
    'value: the extreme of the counted pulls': 'Wert: das Äußerste der Züge, die zählen',
    'lambda and fluid pressure where boost is 80 % of the pull’s highest or more':
      'Lambda und Fluiddruck, wo der Ladedruck 80 % des höchsten auf dem Zug erreicht',
    'duty as logged, raised with the air': 'Auslastung wie aufgezeichnet, mit der Luft angehoben',
    'fuel pressure taken to follow the manifold': 'angenommen, dass der Kraftstoffdruck dem Saugrohr folgt',
    'fuel of the plan over the static flow of the injectors':
      'Kraftstoff des Plans durch den statischen Durchfluss der Einspritzventile',
    continuity: 'Kontinuität',
    'planned to 90 % of the delivery, as pumps age and voltage sags (common practice)':
      'geplant bis 90 % der Förderung, denn Pumpen altern und die Spannung sackt (gängige Praxis)',
    definition: 'Definition',
    'the sensor is kept 5 % below its end, where it reads flat (common practice)':
      'der Sensor bleibt 5 % unter seinem Ende, wo er stehen bleibt (gängige Praxis)',
    'boost: 0.6 to 1.1 of the rise in absolute pressure':
      'Ladedruck: 0,6 bis 1,1 vom Anstieg des absoluten Drucks',
    'spark: 0.5 to 1.5 % per degree at first (common practice)':
      'Zündung: anfangs 0,5 bis 1,5 % je Grad (gängige Praxis)',
    'petrol: equivalence ratio 1.1 to 1.2, Heywood and Taylor (from memory)':
      'Benzin: Äquivalenzverhältnis 1,1 bis 1,2, Heywood und Taylor (aus dem Gedächtnis)',
    'alcohols: from memory': 'Alkohole: aus dem Gedächtnis',
    'water-gas balance': 'Wassergas-Gleichgewicht',
    'element balance with dry air of 20.946 % oxygen':
      'Elementbilanz mit trockener Luft von 20,946 % Sauerstoff',
    'element balance': 'Elementbilanz',
    'interval after JCGM 100:2008, 5.1.2': 'Bereich nach JCGM 100:2008, 5.1.2',
    'which control does what: common practice': 'welche Steuerung was tut: gängige Praxis',
    'a gauge knows lambda alone and shows it on the scale of petrol (common practice)':
      'eine Anzeige kennt nur Lambda und zeigt es auf der Skala von Benzin (gängige Praxis)',
    'common practice: the spray takes over from a rich mixture as it comes in':
      'gängige Praxis: die Einspritzung löst das fette Gemisch ab, sobald sie kommt',
    'a straight line between is assumed': 'dazwischen eine Gerade angenommen',
    '0.30 to 0.36 kg/kWh at full load is common practice':
      '0,30 bis 0,36 kg/kWh bei Volllast ist gängige Praxis',
    'petrol taken as CH1.87, 745 kg/m3: common practice':
      'Benzin als CH1,87 mit 745 kg/m³ angenommen: gängige Praxis',
    'equation of motion': 'Bewegungsgleichung',
    'form of the force as in 40 CFR 1066': 'Form der Kraft wie in 40 CFR 1066',
    'SAE J1349, form of June 1990, as quoted in public':
      'SAE J1349, Form vom Juni 1990, wie öffentlich zitiert',
    'limits from memory': 'Grenzen aus dem Gedächtnis',
    'ISO 1585 and UN Regulation 85, spark ignition, as quoted in public':
      'ISO 1585 und UN-Regelung 85, Fremdzündung, wie öffentlich zitiert',
    'DIN 70020, from memory': 'DIN 70020, aus dem Gedächtnis',
    'propagation of independent errors, JCGM 100:2008, equation 10':
      'Fortpflanzung unabhängiger Fehler, JCGM 100:2008, Gleichung 10',
    'sizes are common practice where not entered': 'wo nichts eingetragen ist, Größen nach gängiger Praxis',
    'linear tyre slip': 'linearer Reifenschlupf',
    '1 to 3 % at full load is common practice': '1 bis 3 % bei Volllast ist gängige Praxis',
    kinematics: 'Kinematik',
    'slip of 1 to 3 % at full load is common practice':
      'Schlupf von 1 bis 3 % bei Volllast ist gängige Praxis',
    'ASHRAE Handbook Fundamentals 2017, chapter 1 (ideal mixture':
      'ASHRAE Handbook Fundamentals 2017, Kap. 1 (ideales Gemisch',
    'Hyland-Wexler saturation pressure)': 'Sättigungsdruck nach Hyland-Wexler)',
    'Newton’s second law': 'zweites Newtonsches Gesetz',
    'energy balance': 'Energiebilanz',
    'efficiency 0.82 to 0.92 is common practice': 'Wirkungsgrad 0,82 bis 0,92 ist gängige Praxis',
    '40 CFR 1066 (coast-down form)': '40 CFR 1066 (Form des Ausrollens)',
    'defaults are common practice': 'Vorgaben sind gängige Praxis',
    'force balance': 'Kräftebilanz',
    'marking as in ISO 4000-1 (from memory)': 'Bezeichnung wie in ISO 4000-1 (aus dem Gedächtnis)',
    'factor 0.97 common practice': 'Faktor 0,97 gängige Praxis',
  }),
);

/** Words of a citation that are not its title. */
export const citationWords: readonly (readonly [RegExp, string])[] = [
  [/\(from memory\)/g, '(aus dem Gedächtnis)'],
  [/\bchapter (?=\d)/g, 'Kap. '],
  [/\bch\. (?=\d)/g, 'Kap. '],
  [/\beq\. (?=\d)/g, 'Gl. '],
  [/\bequation (?=\d)/g, 'Gleichung '],
  [/(\d+)(?:st|nd|rd|th) ed\./g, '$1. Aufl.'],
  [/(?<=\p{Lu}\p{L}+) and (?=\p{Lu}\p{L}+[\s,;(]|\p{Lu}\p{L}+$)/gu, ' und '],
];
