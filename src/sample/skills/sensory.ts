import { cdc, type SampleSkill } from "./sources";

const AREA = "sensory";

export const SENSORY: readonly SampleSkill[] = [
  cdc(
    AREA,
    "loud-sound",
    "Startles, stills or cries at a loud sound",
    2,
    "Tell your baby what made the noise, in a calm voice, and hold close.",
    { sense: "hearing", ages: [0.8, 0.4] },
  ),
  cdc(
    AREA,
    "watch-person",
    "Follows a moving person with the eyes",
    2,
    "Walk slowly around your baby while you talk.",
    { sense: "seeing", ages: [1.2, 0.32] },
  ),
  cdc(
    AREA,
    "watch-hands",
    "Looks at the own hands with interest",
    4,
    "Hold your baby's hands together where both of you can look at them.",
    { ages: [2.9, 0.6] },
  ),
  cdc(
    AREA,
    "turn-to-voice",
    "Turns the head to a voice nearby",
    4,
    "Talk from one side, then the other, before you come into view.",
    { sense: "hearing", ages: [2.8, 0.5] },
  ),
  cdc(
    AREA,
    "mouth-things",
    "Explores things with the mouth",
    6,
    "Offer a clean cloth or a large teether, and stay to watch together.",
  ),
];
