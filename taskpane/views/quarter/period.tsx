import { useStyles } from "../../look/styles";
import { FROM } from "../../words/settings";
import { AsOf } from "../parts/as-of";
import { Section } from "../parts/section";
import { SettingField } from "../parts/setting-field";

export function Period() {
  const styles = useStyles();
  return (
    <Section title="Period">
      <div className={styles.fields}>
        <AsOf />
        <SettingField words={FROM} />
      </div>
    </Section>
  );
}
