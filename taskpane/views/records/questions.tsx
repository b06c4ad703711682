import { Button } from "@fluentui/react-components";
import { useState } from "react";
import { WORD_MEANINGS, type WordMeaning } from "../../../src/records/corrections/settled";
import { areaOptions, areaWordOptions } from "../../../src/records/understanding/choices";
import type {
  AreaTaken,
  MissingColumn,
  NameTaken,
  SameChild,
  ShortYears,
  Understanding,
  WordTaken,
} from "../../../src/records/understanding/understanding";
import { useStyles } from "../../look/styles";
import {
  AREA_WORDS_ABOUT,
  areaLabel,
  areaWordLabel,
  moreSameChild,
  NAMES_ABOUT,
  nameLabel,
  resultsNotShownInWords,
  SAME_CHILD_ABOUT,
  SKILLS_ABOUT,
  SHORT_YEAR_CHOICES,
  shortYearsInWords,
  skillsByArea,
  WORD_WORDS,
  wordLabel,
  WORDS_ABOUT,
} from "../../words/understanding";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { ChoiceField } from "../parts/fields";
import { Section } from "../parts/section";
import { ShowCell } from "./show-cell";

/** What only a person can say: each question once, with a choice. */
export function Questions({ understanding }: { understanding: Understanding }) {
  const { missing, words, resultsNotShown, areas, shortYears, names, sameChild, skills } = understanding;
  return (
    <>
      {missing.length > 0 && <Missing columns={missing} />}
      {words.length + resultsNotShown > 0 && <Words words={words} notShown={resultsNotShown} />}
      {areas.length > 0 && <AreaWords understanding={understanding} />}
      {shortYears && <YearsOfTwoDigits years={shortYears} />}
      {names.length > 0 && <Names names={names} />}
      {sameChild.length > 0 && <Twice pairs={sameChild} />}
      {skills.length > 0 && <Skills understanding={understanding} />}
    </>
  );
}

function Missing({ columns }: { columns: readonly MissingColumn[] }) {
  const { actions } = usePane();
  const styles = useStyles();
  return (
    <Section title="Columns not found">
      <ul className={styles.list}>
        {columns.map(({ table, column, sentence, candidate }) => (
          <li key={`${table} ${column}`} className={styles.entry}>
            <p className={styles.sentence}>{sentence}</p>
            {candidate && (
              <Button
                size="small"
                onClick={() =>
                  actions.choose({ kind: "heading", key: candidate.key, cell: candidate.cell, means: column })
                }
              >
                Yes, {candidate.heading} is {column}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </Section>
  );
}

function Words({ words, notShown }: { words: readonly WordTaken[]; notShown: number }) {
  const styles = useStyles();
  const asked = words.filter(({ doubtful, means }) => doubtful || means === null);
  const known = words.filter((each) => !asked.includes(each));
  return (
    <Section title="Words for results" about={WORDS_ABOUT}>
      <div className={styles.fields}>
        {asked.map((each) => (
          <WordMenu key={each.word} word={each} />
        ))}
      </div>
      {notShown > 0 && <p className={styles.quiet}>{resultsNotShownInWords(notShown)}</p>}
      {known.length > 0 && (
        <Disclosure summary={`Settled: ${known.map(({ word }) => (word === "" ? "blank" : word)).join(", ")}`}>
          <div className={styles.fields}>
            {known.map((each) => (
              <WordMenu key={each.word} word={each} />
            ))}
          </div>
        </Disclosure>
      )}
    </Section>
  );
}

function WordMenu({ word }: { word: WordTaken }) {
  const { actions } = usePane();
  const choices = WORD_MEANINGS.map((value) => ({ value, label: WORD_WORDS[value] }));
  return (
    <ChoiceField
      label={wordLabel(word)}
      hint={word.why}
      value={word.means ?? ""}
      choices={word.means === null ? [{ value: "", label: "Choose what it means" }, ...choices] : choices}
      onChange={(value) =>
        value !== "" && actions.choose({ kind: "word", word: word.word, means: value as WordMeaning })
      }
    />
  );
}

function AreaWords({ understanding }: { understanding: Understanding }) {
  const { actions } = usePane();
  const styles = useStyles();
  const options = areaWordOptions(understanding);
  const choices = ({ means }: AreaTaken) => {
    const all = [...new Set(means === null ? options : [...options, means])].map((value) => ({ value, label: value }));
    return means === null ? [{ value: "", label: "Choose an area" }, ...all] : all;
  };
  return (
    <Section title="Words for areas" about={AREA_WORDS_ABOUT}>
      <div className={styles.fields}>
        {understanding.areas.map((each) => (
          <ChoiceField
            key={each.word}
            label={areaWordLabel(each)}
            hint={each.why}
            value={each.means ?? ""}
            choices={choices(each)}
            onChange={(means) => means !== "" && actions.choose({ kind: "area word", word: each.word, means })}
          />
        ))}
      </div>
    </Section>
  );
}

function YearsOfTwoDigits({ years }: { years: ShortYears }) {
  const { actions } = usePane();
  return (
    <Section title="Years of two digits" about={shortYearsInWords(years)}>
      <ChoiceField
        label="A year such as 24"
        value={years.means}
        choices={SHORT_YEAR_CHOICES}
        onChange={(means) => actions.choose({ kind: "two-digit years", means: means as ShortYears["means"] })}
      />
    </Section>
  );
}

function Names({ names }: { names: readonly NameTaken[] }) {
  const { actions } = usePane();
  const styles = useStyles();
  return (
    <Section title="Names to join" about={NAMES_ABOUT}>
      <div className={styles.fields}>
        {names.map((each) => (
          <ChoiceField
            key={`${each.column} ${each.spelling}`}
            label={nameLabel(each)}
            value={each.means}
            choices={[
              { value: each.likely, label: `Read as “${each.likely}”` },
              { value: each.spelling, label: "A name of its own" },
            ]}
            onChange={(means) => actions.choose({ kind: "name", column: each.column, spelling: each.spelling, means })}
          />
        ))}
      </div>
    </Section>
  );
}

const A_PART = 5;

function Twice({ pairs }: { pairs: readonly SameChild[] }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const [shown, setShown] = useState(A_PART);
  const hidden = pairs.length - shown;
  return (
    <Section title="One child entered twice?" about={SAME_CHILD_ABOUT}>
      <ul className={styles.list}>
        {pairs.slice(0, shown).map((pair) => (
          <li key={`${pair.first} ${pair.second}`} className={styles.entry}>
            <p className={styles.sentence}>{pair.why}</p>
            <div className={styles.actions}>
              <Place place={pair.first} />
              <Place place={pair.second} />
              <Button size="small" disabledFocusable={state.job !== null} onClick={() => actions.joinChildren(pair)}>
                Join them as one child
                <span className={styles.hidden}>
                  : {pair.first} and {pair.second}
                </span>
              </Button>
            </div>
          </li>
        ))}
      </ul>
      {hidden > 0 && (
        <Button size="small" appearance="subtle" onClick={() => setShown(pairs.length)}>
          {moreSameChild(hidden)}
        </Button>
      )}
    </Section>
  );
}

function Place({ place }: { place: string }) {
  const at = place.lastIndexOf("!");
  return <ShowCell sheet={place.slice(0, at)} cell={place.slice(at + 1)} />;
}

function Skills({ understanding }: { understanding: Understanding }) {
  const { actions } = usePane();
  const styles = useStyles();
  const areas = areaOptions(understanding).map((value) => ({ value, label: value }));
  const choices = [{ value: "", label: "Choose an area" }, ...areas];
  return (
    <Section title="List of skills" about={SKILLS_ABOUT}>
      <div className={styles.fields}>
        {skillsByArea(understanding.skills).map(({ area, skills }) => (
          <ChoiceField
            key={area}
            label={areaLabel(area, skills.length)}
            hint={skills.map(({ skill }) => skill).join(", ")}
            value={area}
            choices={choices}
            onChange={(value) => value !== "" && actions.choose({ kind: "area of all", of: area, area: value })}
          />
        ))}
      </div>
      <Disclosure summary="One skill at a time">
        <div className={styles.fields}>
          {understanding.skills.map(({ skill, area }) => (
            <ChoiceField
              key={skill}
              label={skill}
              value={area}
              choices={choices}
              onChange={(value) => value !== "" && actions.choose({ kind: "area", skill, area: value })}
            />
          ))}
        </div>
      </Disclosure>
    </Section>
  );
}
