import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const deliveryProblems: ProblemWordsOf<'delivery'> = {
  'delivery/no-pressure-left': (f, show) => ({
    message: `An der Düse bleiben ${show.span(f.pressureDifference, 'fluidPressure')}: es fließt nichts.`,
    remedy: 'Eine stärkere Pumpe nehmen, oder dort einspritzen, wo der Druck niedriger ist.',
  }),
  'delivery/pump-weaker-than-boost': (f, show) => ({
    message: `Die Pumpe erreicht bei geschlossenem Ausgang ${show.quantity(f.available, 'fluidPressure')}; bei ${show.quantity(f.boost, 'boost')} Ladedruck braucht sie mit dem Rückschlagventil mehr als ${show.quantity(f.needed, 'fluidPressure')}. Es käme nichts an.`,
    remedy: 'Eine stärkere Pumpe nehmen, den Solldruck anheben oder mit weniger Ladedruck planen.',
  }),
  'delivery/nozzle-flow-not-positive': (f, show) => ({
    message: `Für die Düse „${f.name}“ steht ein Durchfluss von ${show.quantity(f.flow, 'volumeFlow')}: er muss über null liegen.`,
    remedy: 'Den Durchfluss eingeben, der aufgeprägt ist oder im Datenblatt steht.',
  }),
  'delivery/nozzle-pressure-not-positive': (f, show) => ({
    message: `Für die Düse „${f.name}“ steht ein Nenndruck von ${show.span(f.pressureDifference, 'fluidPressure')}: er muss über null liegen.`,
    remedy: `Den Druck eingeben, der zum Nenndurchfluss gehört, oft ${show.span(7e5, 'fluidPressure', 0)}.`,
  }),
  'delivery/no-nozzle': () => ({
    message: 'Die Düsenliste ist leer, es gibt also nichts auszuwählen.',
    remedy: 'Mindestens eine Düse eingeben: ihren Nenndurchfluss und den Druck dazu.',
  }),
  'delivery/pump-unknown': () => ({
    message: 'Die Pumpe ist noch nicht bekannt.',
    remedy:
      'Zwei Zahlen eingeben, den Druck bei geschlossenem und den Durchfluss bei offenem Ausgang, oder zwei Punkte ihrer Kennlinie.',
  }),
  'delivery/pump-number-negative': (f, show) => ({
    message: `Ein Punkt der Pumpenkennlinie liegt unter null: ${show.quantity(f.pressure, 'fluidPressure')}, ${show.quantity(f.flow, 'volumeFlow')}.`,
    remedy: 'Drücke über Umgebung und Durchflüsse als positive Zahlen eingeben.',
  }),
  'delivery/pump-curve-rises': (f, show) => ({
    message: `Bei ${show.quantity(f.pressure, 'fluidPressure')} hat die Pumpenkennlinie ${show.quantity(f.flow, 'volumeFlow')}, nicht weniger als die ${show.quantity(f.previousFlow, 'volumeFlow')} davor: gegen mehr Druck fördert eine Pumpe weniger.`,
    remedy: 'Die Punkte prüfen: zwei sind vielleicht vertauscht oder doppelt eingegeben.',
  }),
  'delivery/set-pressure-missing': () => ({
    message: 'Ein Bypass oder Regler hält die Pumpe, aber der eingestellte Druck fehlt.',
    remedy: 'Den Solldruck eingeben, oder angeben, dass nichts die Pumpe begrenzt.',
  }),
  'delivery/bucket-no-amount': (f) => ({
    message: `Punkt ${f.point} der Eimermessung hat weder Volumen noch Masse.`,
    remedy: 'Eingeben, was in der Flasche war, abgelesen oder gewogen.',
  }),
  'delivery/bucket-not-measurable': (f, show) => ({
    message: `Punkt ${f.point} der Eimermessung, bei einer Einstellung von ${show.quantity(f.setting, 'share', 0)}, lässt sich nicht vergleichen: dort dürfte nichts fließen, oder es wurde nichts aufgefangen.`,
    remedy: 'Den Punkt weglassen oder bei höherer Einstellung messen.',
  }),
  'delivery/bucket-empty': () => ({
    message: 'Die Eimermessung hat keinen Punkt, an den angepasst werden kann.',
    remedy: 'Eine notierte Zeit lang in eine Messflasche sprühen und Volumen oder Masse eingeben.',
  }),
};

export const deliveryNotes: NoteWordsOf<'delivery'> = {
  'delivery/bucket-point-off': (f, show) =>
    `Punkt ${f.point} der Eimermessung passt nicht: ${show.quantity(f.measured, 'volumeFlow')} gemessen, ${show.quantity(f.fitted, 'volumeFlow')} nach den anderen erwartet, das ${show.number(f.times, 1)}-fache seiner eigenen Unsicherheit. Er bleibt draußen; noch einmal messen.`,
  'delivery/bucket-points-disagree': (f, show) =>
    `Die Punkte der Eimermessung widersprechen sich um das ${show.number(f.times, 1)}-fache ihrer Unsicherheit, und es sind zu wenige, um zu sagen, welcher falsch ist. Noch einmal messen.`,
  'delivery/bucket-overrides': (f, show) =>
    `Die Eimermessung geht vor: das ${show.number(f.factor, 3)}-fache des Nenndurchflusses, aus ${f.points} ${f.points === 1 ? 'Punkt' : 'Punkten'}.`,
  'delivery/bucket-far-from-rating': (f, show) =>
    `Gemessen ist das ${show.number(f.factor, 2)}-fache dessen, was die Nenndaten sagen. Düse, Filter, Druck und die Einheit des Nenndurchflusses prüfen, bevor einem von beiden zu trauen ist.`,
  'delivery/line-turbulent': (f, show) =>
    `Die Strömung in der Leitung ist nicht mehr laminar (Reynolds-Zahl ${show.number(f.reynolds)}): der Verlust wächst fast mit dem Quadrat des Durchflusses.`,
  'delivery/line-takes-much': (f, show) =>
    `Die Leitung kostet ${show.span(f.loss, 'fluidPressure')}, an der Düse bleiben ${show.span(f.pressureDifference, 'fluidPressure')}. Eine weitere oder kürzere Leitung gibt das zurück.`,
  'delivery/pump-curve-unknown': (f, show) =>
    `Die Kennlinie der Pumpe ist nicht bekannt: angenommen, sie hält ${show.quantity(f.setPressure, 'fluidPressure')} bei jedem Durchfluss. Eine Eimermessung bei voller Einstellung zeigt, ob es stimmt.`,
  'delivery/pump-droops': (f, show) =>
    `Bei diesem Durchfluss hält die Pumpe ${show.quantity(f.pressure, 'fluidPressure')} und nicht die eingestellten ${show.quantity(f.setPressure, 'fluidPressure')}: sie ist am Ende.`,
  'delivery/fluid-arrives-late': (f, show) =>
    `Erst muss sich die Leitung füllen (${show.quantity(f.volume, 'smallVolume')}): aus der Düse kommt das Fluid ${show.quantity(f.delay, 'time', 1)} nach dem Beginn bei ${show.quantity(f.boostAtStart, 'boost')}, da steht der Ladedruck bei ${show.quantity(f.boostThen, 'boost')}.`,
  'delivery/line-kept-full': () =>
    'Ein Rückschlagventil an der Düse hält die Leitung voll; ein nennenswerter Verzug entsteht nicht.',
};
