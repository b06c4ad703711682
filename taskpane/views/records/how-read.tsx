import { SHEET_DAY, type SheetKind } from "../../../src/records/corrections/settled";
import { headingOptions, sheetOptions } from "../../../src/records/understanding/choices";
import type { HeadingSeen, SheetTaken, Understanding } from "../../../src/records/understanding/understanding";
import { useStyles } from "../../look/styles";
import {
  contentInWords,
  DAY_OF_CHECKS_ABOUT,
  isRead,
  meaningInWords,
  SHEET_KIND_WORDS,
  sheetInShort,
  SHEETS_ABOUT,
} from "../../words/understanding";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { ChoiceField, TextField } from "../parts/fields";
import { Section } from "../parts/section";

/** Sheet by sheet and heading by heading: what each is taken for, to be changed by a menu. */
export function HowRead({ understanding }: { understanding: Understanding }) {
  const styles = useStyles();
  const used = understanding.sheets.filter(({ is, doubtful }) => is !== "not used" || doubtful);
  const unused = understanding.sheets.filter((sheet) => !used.includes(sheet));
  return (
    <Section title="How this workbook is read" about={SHEETS_ABOUT}>
      {understanding.changes.length > 0 && (
        <ul className={styles.plainList} aria-label="What changed since it was confirmed">
          {understanding.changes.map(({ sentence }) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {used.map((sheet) => (
        <OneSheet key={sheet.key} sheet={sheet} />
      ))}
      {unused.length > 0 && (
        <Disclosure summary={`Not used: ${unused.map(({ sheet }) => sheet).join(", ")}`}>
          {unused.map((sheet) => (
            <KindMenu key={sheet.key} sheet={sheet} label={sheet.sheet} />
          ))}
        </Disclosure>
      )}
    </Section>
  );
}

function OneSheet({ sheet }: { sheet: SheetTaken }) {
  const styles = useStyles();
  const named = sheet.headings.filter(({ cell }) => cell !== "");
  const unread = named.filter((each) => !isRead(each));
  const doubts = (sheet.doubtful ? 1 : 0) + named.filter(({ doubtful }) => doubtful).length;
  return (
    <Disclosure
      summary={
        <>
          <strong>{sheet.sheet}</strong>: {sheetInShort(sheet)}
          {doubts > 0 && (
            <strong className={styles.under}>Please check: {doubts === 1 ? "1 guess" : `${doubts} guesses`}</strong>
          )}
          {sheet.is !== "not used" && unread.length > 0 && (
            <span className={styles.under}>Not used: {unread.map(({ heading }) => heading).join(", ")}</span>
          )}
        </>
      }
    >
      <p className={styles.quiet}>{sheet.why}</p>
      <div className={styles.fields}>
        <KindMenu sheet={sheet} label="This sheet is" />
        {sheet.is !== "not used" && <Headings sheet={sheet} />}
      </div>
    </Disclosure>
  );
}

function KindMenu({ sheet, label }: { sheet: SheetTaken; label: string }) {
  const { actions } = usePane();
  return (
    <ChoiceField
      label={label}
      value={sheet.is}
      choices={sheetOptions().map((value) => ({ value, label: SHEET_KIND_WORDS[value] }))}
      onChange={(value) => actions.choose({ kind: "sheet", key: sheet.key, is: value as SheetKind })}
    />
  );
}

/** Those that name skills come apart: a grid has many, and they are read as they are written. */
function Headings({ sheet }: { sheet: SheetTaken }) {
  const skills = sheet.headings.filter(({ skill, doubtful }) => skill !== null && !doubtful);
  const others = sheet.headings.filter((each) => !skills.includes(each));
  return (
    <>
      {others.map((heading) => (
        <HeadingMenu key={`${heading.cell} ${heading.heading}`} sheet={sheet} heading={heading} />
      ))}
      {skills.length > 0 && (
        <Disclosure summary={`${skills.length} headings are read as skills`}>
          {skills.map((heading) => (
            <HeadingMenu key={heading.cell} sheet={sheet} heading={heading} />
          ))}
        </Disclosure>
      )}
    </>
  );
}

/** Means a skill in the menu; no column is named so. */
const AS_SKILL = "skill ";
const NOT_USED = "";

/** The one day of all checks of a grid without a column of days. */
function DayOfChecks({ sheet, heading }: { sheet: SheetTaken; heading: HeadingSeen }) {
  const { actions } = usePane();
  return (
    <TextField
      type="date"
      label={`Day of these checks${heading.doubtful ? " (please check)" : ""}`}
      hint={DAY_OF_CHECKS_ABOUT}
      value={heading.means ?? ""}
      onChange={(day) =>
        actions.choose({ kind: "heading", key: sheet.key, cell: heading.cell, means: day === "" ? null : day })
      }
    />
  );
}

function HeadingMenu(props: { sheet: SheetTaken; heading: HeadingSeen }) {
  return props.heading.heading === SHEET_DAY ? <DayOfChecks {...props} /> : <MeaningMenu {...props} />;
}

function MeaningMenu({ sheet, heading }: { sheet: SheetTaken; heading: HeadingSeen }) {
  const { actions } = usePane();
  const options = headingOptions(sheet.is).map((means) => ({ value: means ?? NOT_USED, label: meaningInWords(means) }));
  const skill = { value: AS_SKILL, label: "A skill" };
  const choose = (value: string) =>
    actions.choose(
      value === AS_SKILL
        ? { kind: "skill heading", key: sheet.key, cell: heading.cell, skill: heading.skill ?? heading.heading }
        : { kind: "heading", key: sheet.key, cell: heading.cell, means: value === NOT_USED ? null : value },
    );
  return (
    <ChoiceField
      label={`${heading.heading}${heading.doubtful ? " (please check)" : ""}`}
      hint={contentInWords(heading)}
      value={heading.skill !== null ? AS_SKILL : (heading.means ?? NOT_USED)}
      choices={sheet.is === "grid" ? [skill, ...options] : options}
      onChange={choose}
    />
  );
}
