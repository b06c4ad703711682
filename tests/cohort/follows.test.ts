import { restoreFollowed } from "../../src/cohort/follows";
import { type Attainment, STATE } from "../../src/cohort/state";
import type { Skill } from "../../src/records/records";

const { met, lost, lostToConfirm, notMet } = STATE;

/** By hand: what was lost stays met where the next of its chain is met, and so on down, whatever the order of the rows. */
test.each([
  ["earliest first", [null, 0, 1], [lost, lostToConfirm, met], [met, met, met]],
  ["latest first", [1, 2, null], [met, lostToConfirm, lost], [met, met, met]],
  ["the middle one first", [2, 0, null], [lost, met, lost], [met, met, met]],
  ["the last not met", [null, 0, 1], [lost, lost, notMet], [lost, lost, notMet]],
])("a chain of three, %s", (_, follows, before, after) => {
  const attainment = { skillCount: 3, state: Uint8Array.from([...before, ...before]) } as unknown as Attainment;
  restoreFollowed(attainment, follows.map((each) => ({ follows: each })) as unknown as Skill[]);
  expect([...attainment.state]).toEqual([...after, ...after]);
});
