import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

const zipFaults = {
  path: 'ihr Name aus der Sitzung hinausführt oder nicht überall erlaubt ist',
  link: 'sie eine Verknüpfung ist und keine Datei',
  encrypted: 'sie verschlüsselt ist',
  method: 'sie auf eine Weise gepackt ist, die dieses Programm nicht entpackt',
  twice: 'derselbe Name zweimal steht',
  overlap: 'sie über einer anderen liegt',
};

const versionFaults = {
  damaged: 'sie ist beschädigt',
  newer: 'ein neueres Programm hat sie geschrieben',
  invalid: 'ein Feld darin passt nicht',
};

export const storeProblems: ProblemWordsOf<'store'> = {
  'store/missing': (f) => ({
    message: `Unter ${f.path} ist nichts zu finden.`,
    remedy: 'Den Namen prüfen oder die Datei neu wählen.',
  }),
  'store/no-folder': (f) => ({
    message: `Es gibt keinen Ordner ${f.path}, in den geschrieben werden könnte.`,
    remedy: 'Den Ordner zuerst anlegen oder einen anderen Ort wählen.',
  }),
  'store/not-allowed': (f) => ({
    message: `Dieses Programm darf ${f.path} nicht lesen oder schreiben.`,
    remedy: 'Die Rechte ändern oder die Sitzung in einen eigenen Ordner kopieren.',
  }),
  'store/disk-read-only': (f) => ({
    message: `Der Datenträger mit ${f.path} ist schreibgeschützt: Auf ihn lässt sich nichts schreiben.`,
    remedy:
      'Einen Ort auf einem anderen Datenträger wählen oder die Sitzung dorthin kopieren und die Kopie öffnen.',
  }),
  'store/disk-full': (f) => ({
    message: `Der Datenträger ist voll; ${f.path} wurde nicht geschrieben.`,
    remedy: 'Platz schaffen und wiederholen. Was vorher gespeichert war, steht noch.',
  }),
  'store/folder-gone': (f) => ({
    message: `${f.path} antwortet nicht: Der Ordner wurde entfernt, oder das Laufwerk oder die Freigabe ist weg.`,
    remedy: 'Das Laufwerk wieder verbinden und die Sitzung neu öffnen. Was gespeichert war, liegt dort.',
  }),
  'store/name-too-long': (f) => ({
    message: `Der Pfad ${f.path} ist für diesen Datenträger zu lang.`,
    remedy: 'Einen kürzeren Namen oder einen Ordner weiter oben wählen.',
  }),
  'store/disk-error': (f) => ({
    message: `Der Datenträger hat ${f.path} abgelehnt (${f.code}).`,
    remedy: 'Die Sitzung auf einen anderen Datenträger kopieren und dort öffnen.',
  }),
  'store/not-a-plain-file': (f) => ({
    message: `${f.path} ist eine Verknüpfung oder ein Gerät, wo eine einfache Datei hingehört.`,
    remedy: 'Die Datei selbst dorthin legen; Verknüpfungen in einer Sitzung wird nicht gefolgt.',
  }),
  'store/is-a-folder': (f) => ({
    message: `${f.path} ist ein Ordner, keine Datei.`,
    remedy:
      'Eine Datei darin wählen. Ein Ordner, der am Platz einer Datei der Sitzung steht, ist dort zu entfernen.',
  }),
  'store/too-large': (f) => ({
    message: `${f.path} ist viel größer, als eine solche Datei je wird.`,
    remedy: 'In einem Texteditor ansehen; sie ist wohl nicht, was ihr Name sagt.',
  }),
  'store/bad-path': (f) => ({
    message: `${f.path} läge außerhalb des Ordners.`,
    remedy: 'Einen einfachen Namen ohne Schrägstriche verwenden.',
  }),
  'store/already-there': (f) => ({
    message: `Unter ${f.path} steht schon etwas.`,
    remedy: 'Einen anderen Namen wählen oder das Vorhandene öffnen.',
  }),
  'store/not-a-session': (f) => ({
    message: `${f.path} ist kein Sitzungsordner: Er enthält keine session.json.`,
    remedy: 'Den Ordner wählen, in dem session.json liegt, oder eine neue Sitzung anlegen.',
  }),
  'store/damaged': (f) => ({
    message: `${f.file} ist beschädigt, und auch keine frühere Fassung in history ist lesbar.`,
    remedy:
      'Die Datei aus einer Sicherung holen. Die Logs in runs sind unberührt und lassen sich in eine neue Sitzung einlesen.',
  }),
  'store/locked': (f, show) => ({
    message: `Die Sitzung ist in einem anderen Programm offen (Prozess ${f.pid} auf ${f.host}, seit ${show.moment(f.since)}).`,
    remedy: 'Dort schließen und hier noch einmal öffnen, oder hier nur ansehen.',
  }),
  'store/lock-lost': () => ({
    message: 'Ein anderes Programm hat diese Sitzung übernommen; von hier wird nichts mehr geschrieben.',
    remedy: 'Die Sitzung neu öffnen, um ihren jetzigen Stand zu sehen.',
  }),
  'store/read-only': (f) => ({
    message: `${f.folder} ist nur zum Lesen offen.`,
    remedy: 'Das andere Programm schließen oder den Ordner an einen beschreibbaren Ort kopieren.',
  }),
  'store/closed': (f) => ({
    message: `${f.folder} wurde geschlossen.`,
    remedy: 'Neu öffnen.',
  }),
  'store/changed-outside': (f) => ({
    message: `${f.file} wurde von einem anderen Programm geändert, während die Sitzung offen war, und deshalb nicht überschrieben.`,
    remedy: 'Die Sitzung neu öffnen, um die Änderung zu übernehmen, dann die letzte Eingabe wiederholen.',
  }),
  'store/source-changing': (f) => ({
    message: `${f.name} wurde noch geschrieben, während es kopiert wurde.`,
    remedy: 'Den Logger anhalten und die Datei noch einmal einlesen.',
  }),
  'store/source-unreadable': (f) => ({
    message: `${f.path} ließ sich nicht bis zum Ende lesen: Karte, Laufwerk oder Freigabe versagt oder ist weg (${f.code}). Nichts davon wurde behalten.`,
    remedy: 'Wieder anschließen oder die Datei auf diesen Rechner kopieren, dann noch einmal einlesen.',
  }),
  'store/upload-broken': (f) => ({
    message: `${f.name} kam nicht vollständig an; nichts davon wurde behalten.`,
    remedy: 'Die Datei noch einmal ablegen.',
  }),
  'store/source-missing': (f) => ({
    message: `Das Log ${f.name} der Aufzeichnung ${f.runId} liegt nicht im Sitzungsordner.`,
    remedy: 'Die Originaldatei noch einmal einlesen: Sie kommt an ihren Platz zurück.',
  }),
  'store/source-damaged': (f) => ({
    message: `Das Log ${f.name} der Aufzeichnung ${f.runId} ist nicht mehr das, was eingelesen wurde.`,
    remedy:
      'Die Originaldatei noch einmal einlesen: Sie kommt an ihren Platz, die beschädigte Kopie wird beiseitegelegt.',
  }),
  'store/not-a-zip': (f) => ({
    message: `${f.name} ist keine Zip-Datei oder wurde abgeschnitten.`,
    remedy: 'Noch einmal senden oder kopieren.',
  }),
  'store/zip-unsafe': (f) => ({
    message: `${f.name} wurde nicht entpackt: Die Datei ${f.entry} darin wird abgelehnt, weil ${zipFaults[f.why]}.`,
    remedy: 'Den Absender um eine Zip-Datei aus diesem Programm bitten. Nichts davon wurde behalten.',
  }),
  'store/zip-too-large': (f) => ({
    message: `${f.name} würde zu weit mehr entpackt, als eine Sitzung enthält.`,
    remedy: 'Den Absender fragen, was es ist. Bei einer so großen Sitzung den Ordner selbst kopieren.',
  }),
  'store/zip-no-session': (f) => ({
    message: `${f.name} enthält keine Sitzung.`,
    remedy: 'Eine Zip-Datei wählen, in der eine session.json liegt.',
  }),
  'store/zip-damaged': (f) => ({
    message: `${f.name} ist bei ${f.entry} beschädigt. Nichts davon wurde behalten.`,
    remedy: 'Noch einmal senden oder kopieren.',
  }),
  'store/other-session': (f) => ({
    message: `„${f.theirs}“ ist keine Kopie von „${f.mine}“; die beiden lassen sich nicht zusammenführen.`,
    remedy: 'Sie neben dieser öffnen oder ihre Logs einlesen.',
  }),
  'store/no-run': (f) => ({
    message: `Der Sitzungsordner enthält keine Aufzeichnung ${f.runId}.`,
    remedy: 'Das Log noch einmal einlesen.',
  }),
  'store/no-version': (f) => ({
    message: `Der Sitzungsordner enthält keine frühere Fassung ${f.file}.`,
    remedy: 'Die Liste noch einmal lesen; alte Fassungen eines Tages werden ausgedünnt.',
  }),
  'store/version-unusable': (f) => ({
    message: `${f.file} lässt sich nicht öffnen: ${versionFaults[f.why]}.`,
    remedy: 'Eine andere Fassung nehmen oder die Datei in einem Texteditor ansehen.',
  }),
};

const listed = (fields: readonly string[]) =>
  fields.length <= 5
    ? fields.join(', ')
    : `${fields.slice(0, 5).join(', ')} und ${fields.length - 5} weitere`;

const repairs = {
  history: 'Die Reparatur setzt die letzte gute Fassung aus history an ihre Stelle.',
  'from-log': 'Die Reparatur legt sie aus dem Log daneben neu an.',
  'import-again': 'Das Original-Log noch einmal einlesen, dann kommt es an seinen Platz zurück.',
  'set-aside': 'Die Reparatur legt sie beiseite; nichts anderes hängt davon ab.',
  none: 'Aus einer Sicherung holen.',
};

export const storeNotes: NoteWordsOf<'store'> = {
  'store/changed-outside': (f) =>
    f.fields.length === 0
      ? `${f.file} wurde von einem anderen Programm geschrieben; der Inhalt gilt, wie er dasteht.`
      : `${f.file} wurde von einem anderen Programm geändert und gilt, wie sie dasteht. Anders: ${listed(f.fields)}.`,
  'store/restored': (f, show) =>
    f.to === null
      ? `${f.file} fehlte; die Fassung vom ${show.moment(f.savedAt)} steht an ihrer Stelle.`
      : `${f.file} war beschädigt. Sie liegt jetzt in ${f.to}, und die Fassung vom ${show.moment(f.savedAt)} steht an ihrer Stelle.`,
  'store/set-aside': (f) => `${f.file} war beschädigt und liegt jetzt in ${f.to}.`,
  'store/damage-left': (f) =>
    `${f.file} ist beschädigt. Nichts wurde verschoben, weil die Sitzung nur zum Lesen offen ist.`,
  'store/import-finished': (f) =>
    `Das Einlesen der Aufzeichnung ${f.runId} war unterbrochen worden und ist jetzt vollständig.`,
  'store/import-discarded': (f) =>
    `Ein unterbrochenes Einlesen (${f.name}) wurde entfernt; das Original ist unberührt. Bitte noch einmal einlesen.`,
  'store/unfinished-removed': (f) =>
    f.files === 1
      ? 'Eine halb geschriebene Datei eines unterbrochenen Speicherns wurde entfernt.'
      : `${f.files} halb geschriebene Dateien unterbrochenen Speicherns wurden entfernt.`,
  'store/migrated': (f) =>
    `Die Sitzung stammt von einer älteren Fassung dieses Programms (Format ${f.from}) und hat jetzt Format ${f.to}. Das Original liegt in ${f.original}.`,
  'store/lock-taken-over': (f, show) =>
    `Die Sitzung war nicht ordentlich geschlossen worden (Prozess ${f.pid} auf ${f.host}, seit ${show.moment(f.since)}).`,
  'store/run-rebuilt': (f) =>
    `Die Angaben zur Aufzeichnung ${f.runId} waren mit allen Fassungen verloren und wurden aus dem Log neu angelegt: Spaltenkorrekturen, Änderungen an Zügen und Notizen sind weg.`,
  'store/source-missing': (f) =>
    `Das Log ${f.name} der Aufzeichnung ${f.runId} fehlt. Das Original noch einmal einlesen, dann kommt es an seinen Platz zurück.`,
  'store/file-damaged': (f) => `${f.file} ist beschädigt. ${repairs[f.repair]}`,
  'store/file-missing': (f) => `${f.file} fehlt. ${repairs[f.repair]}`,
  'store/unfinished-found': (f) =>
    `${f.file} blieb von einem unterbrochenen Schreiben übrig; beim Öffnen der Sitzung wird aufgeräumt.`,
  'store/newer-run': (f) => `${f.file} stammt von einem neueren Programm und blieb, wie sie ist.`,
  'store/unknown-file': (f) => `${f.file} gehört nicht zu einer Sitzung und blieb, wo es ist.`,
  'store/no-second-copy': (f) =>
    `${f.file} hat noch keine zweite Kopie in history; das nächste Speichern legt eine an.`,
  'store/cache-unusable': (f) =>
    `${f.file} ist beschädigt oder veraltet; sie wird neu angelegt, wenn sie gebraucht wird.`,
};
