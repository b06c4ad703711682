import { cdc, type SampleSkill } from "./sources";

const AREA = "sensory";

export const SENSORY: readonly SampleSkill[] = [
  cdc(
    AREA,
    "loud-sound",
    "Startles, stills or cries at a loud sound",
    2,
    "Tell your baby what made the noise, in a calm voice, and hold close.",
  ),
  cdc(AREA, "watch-person", "Follows a moving person with the eyes", 2, "Walk slowly around the cot while you talk."),
  cdc(
    AREA,
    "watch-hands",
    "Gazes at the own hands",
    4,
    "Tie a soft ribbon loosely round one wrist while you watch together.",
  ),
  cdc(
    AREA,
    "turn-to-voice",
    "Turns the head to a voice nearby",
    4,
    "Talk from one side, then the other, before you come into view.",
  ),
  cdc(
    AREA,
    "mouth-things",
    "Explores things with the mouth",
    6,
    "Keep a small basket of safe wooden, rubber and cloth things to taste.",
  ),
];
