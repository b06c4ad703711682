import { EDGES } from "../../words/settings";
import { Section } from "../parts/section";
import { SettingField } from "../parts/setting-field";

const ABOUT = "Fewer age groups show more. The other settings are those of Quarter.";

export function Bands() {
  return (
    <Section title="Age groups" about={ABOUT}>
      <SettingField words={EDGES} />
    </Section>
  );
}
