import type { TableName } from "../tables/spec";

/** What cells below a heading may be, for a heading that only looks like one of a column. */
type Fits = "dates" | "numbers" | "words" | "ids" | "anything";

interface Likely {
  readonly pattern: RegExp;
  readonly fits: Fits;
}

const like = (pattern: RegExp, fits: Fits): Likely => ({ pattern, fits });

const CHILD = like(
  /^(the )?(child|kid|client|participant|student|infant|baby|toddler|case|chart|record|file|nino|nina|menor|codigo|clave|id|mrn|name|initials)s?\b|\b(child|kid|client|participant|student|infant|baby|toddler|nino|nina|menor)\b.*\b(id|code|number|no|num|initials|name|codigo|clave)\b/,
  "ids",
);
const AREA = like(/\b(area|domain|dominio|concern)s?\b/, "words");

/**
 * Headings that look like those of a column without being among its synonyms, in words without accents. Such a heading is
 * only ever proposed. Common practice in programs' own workbooks, no source.
 */
export const LIKELY: Readonly<Record<TableName, Readonly<Record<string, Likely>>>> = {
  Children: {
    child: CHILD,
    birth: like(
      /\b(dob|d o b|birth|birthdate|born|bday|nacimiento|nac)\b(?!.*\b(weight|order|place|hospital|gest))/,
      "dates",
    ),
    dueDate: like(/\b(due|edc|edd|fpp|expected|probable)\b/, "dates"),
    gestation: like(/\b(ga|ega|gest\w*|weeks? at birth|semanas)\b|^(weeks|wks)$/, "numbers"),
    weeksEarly: like(/\b(weeks? (early|prem\w*)|prem\w* weeks?|wks (early|prem\w*)|prematur\w*)\b/, "numbers"),
    site: like(
      /\b(site|clinic|location|center|centre|office|campus|building|branch|hub|region|county|sede|sitio|centro|clinica)\b/,
      "words",
    ),
    therapist: like(
      /\b(therapist|staff|provider|worker|clinician|specialist|coordinator|teacher|visitor|caseload|assigned|lead|tx|terapeuta|proveedora?|pt|ot|slp)\b/,
      "words",
    ),
    enrolled: like(
      /\b(enrol\w*|start\w*|began|intake|admi\w*|entry|entered|joined|opened|(1st|first) (seen|visit|session|contact)|date in|in date|ingreso|inscripcion|inicio)\b|^in$/,
      "dates",
    ),
    left: like(
      /\b(left|leave|exit\w*|disch\w*|end\w*|closed?|withdr\w*|graduat\w*|terminat\w*|dismiss\w*|dc|d c|last day|date out|out date|salida|egreso|baja|fin)\b|^out$/,
      "dates",
    ),
    family: like(/\b(famil\w*|household|sibling\w*|hogar)\b/, "anything"),
  },
  Observations: {
    child: CHILD,
    skill: like(/\b(skill|milestone|item|task|activity|behavior|destreza|habilidad|hito)s?\b/, "anything"),
    date: like(/\b(date|day|when|visit|seen|observed|checked|fecha)\b/, "dates"),
    result: like(/\b(result|status|score|outcome|rating|level|response|mark|resultado|estado|logro)\b/, "words"),
    observer: like(/\b(observer|observed by|seen by|staff|therapist|by|who)\b/, "words"),
    entered: like(/\b(entered|entry|typed|keyed|input|data entry)\b/, "dates"),
  },
  Skills: {
    skill: like(/\b(skill|milestone|item|destreza|habilidad|hito)s?\b/, "anything"),
    area: AREA,
    opens: like(/\b(opens?|from|start|earliest|desde)\b/, "numbers"),
    closes: like(/\b(closes?|to|by|end|latest|hasta)\b/, "numbers"),
  },
  Referrals: {
    child: CHILD,
    referred: like(/\b(refer\w*|sent|made|remision|derivacion|fecha)\b/, "dates"),
    area: like(/\b(areas?|domains?|concerns?|(for )?what|about|dominio)\b/, "words"),
    reason: like(/\b(reasons?|why|because|motivo)\b/, "anything"),
    from: like(/\b(from|source|referr\w* by|sent by|who (referred|sent)|origen)\b/, "words"),
    to: like(/\b(to|agency|destination|destino)\b/, "words"),
    received: like(/\b(receiv\w*|intake|heard|answer\w*|reply|replied|recibid\w*)\b/, "dates"),
    evaluated: like(/\b(eval\w*|assess\w*)\b/, "dates"),
    eligible: like(/\b(eligib\w*|qualif\w*|elegible)\b/, "words"),
    plan: like(/\b(plan|ifsp)\b/, "dates"),
    closed: like(/\b(clos\w*|end\w*|exit\w*)\b/, "dates"),
    lateReason: like(/\b(late|delay\w*)\b/, "words"),
  },
  Signs: {
    child: CHILD,
    date: like(/\b(date|when|seen|fecha)\b/, "dates"),
    sign: like(/\b(signs?|concern|warning|flag|senal)\b/, "anything"),
    seen: like(/\b(seen|present|observed)\b/, "words"),
    action: like(/\b(action|follow ?up|done)\b/, "dates"),
  },
  Ratings: {
    child: CHILD,
    outcome: like(/\b(outcome|area|resultado)\b/, "words"),
    entryDate: like(/\b(entry|initial|start)\b/, "dates"),
    entryRating: like(/\b(entry|initial|start)\b/, "numbers"),
    exitDate: like(/\b(exit|final|end)\b/, "dates"),
    exitRating: like(/\b(exit|final|end)\b/, "numbers"),
    newSinceEntry: like(/\b(new|gain\w*|progress\w*|improv\w*)\b/, "words"),
  },
};

/** A heading in plain words: no accents, no punctuation, lower case, `#` as number. */
export function plainWords(heading: string): string {
  return heading
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll("#", " number ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}
