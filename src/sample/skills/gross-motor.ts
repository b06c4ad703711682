import { around, cdc, type SampleSkill, who } from "./sources";

const AREA = "gross motor";

export const GROSS_MOTOR: readonly SampleSkill[] = [
  cdc(
    AREA,
    "head-up",
    "Lifts the head while lying on the front",
    2,
    "Lie down face to face on a blanket and chat for a minute or two, a few times a day.",
  ),
  cdc(
    AREA,
    "elbow-prop",
    "Rests on the forearms while lying on the front",
    4,
    "Set a favourite rattle just ahead during floor play and wait for a good look at it.",
  ),
  cdc(
    AREA,
    "straight-arms",
    "Lies on the front and pushes the chest up on straight arms",
    6,
    "Sit on the floor a little way off and call; let a proud push-up win a smile.",
    {
      follows: "elbow-prop",
    },
  ),
  around(
    AREA,
    "roll-both",
    "Rolls both ways, front to back and back to front",
    6,
    "Roll a soft ball slowly past one side, then the other, and cheer the turn.",
  ),
  cdc(
    AREA,
    "prop-sit",
    "Sits leaning on the hands",
    6,
    "Sit behind your baby, legs apart like an armchair, and look at a picture book together.",
  ),
  who(
    "sit-alone",
    "Sits steady with both hands free",
    [3.8, 6.0, 9.2],
    "Put two toys between the knees so that both hands are busy while sitting.",
    {
      follows: "prop-sit",
      ageBasis: "corrected",
    },
  ),
  cdc(
    AREA,
    "get-to-sit",
    "Gets up into sitting without help",
    9,
    "After a nap, wait a moment before lifting; offer a finger rather than a pull.",
  ),
  who(
    "stand-held",
    "Stands upright holding on to something firm",
    [4.8, 7.6, 11.4],
    "Move a toy from the floor up to the sofa seat and play there together.",
    {
      ageBasis: "corrected",
    },
  ),
  who(
    "crawl",
    "Crawls on hands and knees, belly clear of the floor",
    [5.2, 8.5, 13.5],
    "Make a low cushion hill and crawl over it side by side.",
    {
      ageBasis: "corrected",
    },
  ),
  cdc(
    AREA,
    "pull-up",
    "Pulls to standing at a rail, table or sofa",
    12,
    "Leave a sturdy low box near a favourite person and let your child climb up to say hello.",
  ),
  who(
    "walk-held",
    "Takes steps sideways or forward while holding on",
    [5.9, 9.2, 13.7],
    "Line up two chairs with a small gap and hide a toy at the far end.",
    {
      ageBasis: "corrected",
    },
  ),
  who(
    "stand-alone",
    "Stands for a while without touching anything",
    [6.9, 11.0, 16.9],
    "Blow bubbles while your child stands at your knee; both hands will want to pop them.",
    {
      follows: "stand-held",
      ageBasis: "corrected",
    },
  ),
  who(
    "walk-alone",
    "Walks several steps with nobody holding on",
    [8.2, 12.1, 17.6],
    "Kneel two steps away with open arms and make the landing a hug.",
    {
      follows: "crawl",
      ageBasis: "corrected",
    },
  ),
  cdc(
    AREA,
    "climb-seat",
    "Gets up on to a sofa and down again without help",
    18,
    "Practise backing down feet first, with a song for each trip.",
    {
      ageBasis: "corrected",
    },
  ),
  cdc(AREA, "run", "Breaks into a run", 24, "Play chase on grass and let yourself be caught."),
  cdc(
    AREA,
    "jump",
    "Leaves the floor with both feet at once",
    30,
    "Jump over a chalk line together and count three, two, one.",
  ),
];
