/** A turn that no text has, and what is written in its place. */
export interface Turn {
  readonly stands: RegExp;
  readonly write: string;
  /** Parts of the code where no reader meets it, or where it is the right word. */
  readonly except?: readonly string[];
}

/** Values, ids and headings that stay as they are, because people's own files have them. */
export const VALUES: ReadonlySet<string> = new Set([
  ...["had at first look", "gained here", "out of date", "not assessed", "not looked for", "not looked"],
  ...["present, absent or not looked for", "Enrolment date", "Windowline decisions", "job cancelling"],
  ...["decisions changed", "decisions loaded", "decisions unread", "ledger opened", "ledger saved"],
  ...["--ledger <file>", "--decisions <file>", "--earlier-decisions <file>"],
]);

/** Names of the counts that tie a release together: no page shows them. */
const KEYS = ["src/release/draft/", "src/release/ties/", "src/release/sets/"];
/** What a family does with its child, in everyday words. */
const FAMILY = ["src/sample/skills/", "src/report/pages/"];

export const TURNS: readonly Turn[] = [
  { stands: /child-skill/i, write: "skill checks" },
  {
    stands: /\b(current|last|first|another|each|every|no|a|two|the) looks?\b(?! (at|like))/i,
    write: "check",
    except: KEYS,
  },
  {
    stands: /(?<!not )\blook(s|ed)? (at|for|whether|which|through)\b/i,
    write: "check, compare",
    except: [...KEYS, ...FAMILY],
  },
  { stands: /\bfollowed\b(?! (by|up))/i, write: "in the program", except: KEYS },
  { stands: /had at first look/i, write: "already met at first check", except: KEYS },
  { stands: /gained here/i, write: "met since" },
  { stands: /\bassess(ed|es)?\b/i, write: "checked", except: KEYS },
  { stands: /out of date/i, write: "needs a recheck" },
  { stands: /\bage bands?\b|\bby band\b/i, write: "age group" },
  { stands: /\boutsiders?\b|\battacked\b/i, write: "a reader from outside", except: ["METHOD.md"] },
  { stands: /\breplicates?\b(?!])/i, write: "repeated draws", except: ["METHOD.md"] },
  { stands: /\bdecisions?\b/i, write: "correction" },
  { stands: /(?<!--)\bledgers?\b(?!\.json)/i, write: "release log", except: [...KEYS, "METHOD.md"] },
  {
    stands:
      /\b(row|column|page|line|file|sheet|entry|one|once|bar) an? (child|skill|row|table|area|day|quarter|source|sheet|page|part|outcome|month|group|step)\b/i,
    write: "one row per child",
  },
  {
    stands: /(?<!there )\b(is|are) no (diagnosis|row|rows|date|number|finding|child|text|code)\b|\bno row is used\b/i,
    write: "is not a diagnosis; none of the rows is used",
  },
  { stands: /\bstands?\b(?! out)/i, write: "is", except: [...KEYS, ...FAMILY] },
  {
    stands: /\bholds?\b(?! (them )?back)/i,
    write: "has, contains, says",
    except: [...KEYS, ...FAMILY, "METHOD.md", "release/ledger.ts"],
  },
  { stands: /\btells (which|what|of|where|how|each|who|the|that|apart)\b/i, write: "says, lists" },
  { stands: /\bmended\b/i, write: "corrected" },
  { stands: /which is which/i, write: "the release does not say which" },
  { stands: /as far as the method/i, write: "wherever the method can link them" },
  { stands: /\b(wants?|needs?) a look\b|\blooks used\b/i, write: "needs checking" },
  { stands: /\blacks\b|for want of/i, write: "is missing; because there was not enough" },
  { stands: /\bbeware\b/i, write: "How to read these figures" },
  { stands: /\bwhoever\b|kind of failure/i, write: "the person who" },
];

export const BRITISH: Turn = {
  stands:
    /\b(colour\w*|neighbour\w*|centres?|programmes?|enrolments?|behaviours?|favour\w*|labelled|cancell(ed|ing)|judgements?|(standardi|recogni|optimi|summari|organi|minimi|normali)s(e|ed|es|ing|ation))\b/i,
  write: "American spelling",
  except: KEYS,
};
