/** The figures of a report's preview: the rows behind them, and how firm they are. Counted by hand from the rows below. */
import { buildReport } from "../../taskpane/jobs/build";
import { figureAnswer } from "../../taskpane/jobs/figures";
import { openPane } from "../../taskpane/jobs/open";
import { bookOf } from "./books";
import { MemoryHost } from "./memory-host";
import { paneOver } from "./pane-over";

/** Three children past the window: one met it, one did not, one was last checked without it 100 days before the day. */
const PROGRAM = {
  Children: [
    ["Child", "Birth date", "Enrolled"],
    ...["Zora", "Yann", "Xeno"].map((id) => [id, "2023-06-10", "2023-09-01"]),
  ],
  Observations: [
    ["Child", "Skill", "Date", "Result"],
    ["Zora", "sits", "2024-05-10", "met"],
    ["Yann", "sits", "2024-05-11", "not met"],
    ["Xeno", "sits", "2024-03-22", "not met"],
  ],
  Skills: [
    ["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Expected share"],
    ["sits", "Sits", "gross motor", 6, 9, "chronological", 0.75],
  ],
};

async function made() {
  const { pane } = paneOver(new MemoryHost(bookOf(PROGRAM)));
  await openPane(pane);
  pane.store.dispatch({ type: "entry changed", name: "asOf", value: "2024-06-30" });
  await buildReport(pane);
  const { findings } = pane.store.state().quarter.made!;
  return { pane, finding: findings.findIndex(({ id }) => id === "expected-by-now"), findings };
}

test("a figure of the preview leads to its rows and to how firm it is", async () => {
  const { pane, finding, findings } = await made();
  expect(findings[finding]?.figures).toEqual(["Gross motor, expected of 75 in 100: 1 of 2 met"]);
  const ask = { finding, figure: 0 };
  expect(await figureAnswer(pane, "behind", { ...ask, from: 1 })).toEqual({
    children: 3,
    rows: 3,
    cells: [
      { sheet: "Observations", cell: "D3" },
      { sheet: "Observations", cell: "D4" },
    ],
  });
  const firm = await figureAnswer(pane, "firm", ask);
  // by the last check 50 or 51 days before, 1 of 2; with checks of 120 days, or of any age, 1 of 3
  expect(firm?.sentence).toMatch(/^Between 1 of 3 and 1 of 2 under all \d+ defensible choices; whether checks older/);
  expect(firm?.picture.rows.filter(({ isOwn }) => isOwn)).toHaveLength(1);
});

test("no id of a child reaches the pane with them, and one that is not there is told in a sentence", async () => {
  const { pane, finding } = await made();
  const answers = [
    await figureAnswer(pane, "behind", { finding, figure: 0, from: 0 }),
    await figureAnswer(pane, "firm", { finding, figure: 0 }),
  ];
  expect(JSON.stringify([answers, pane.store.state()])).not.toMatch(/Zora|Yann|Xeno/);
  expect(await figureAnswer(pane, "firm", { finding, figure: 9 })).toBeNull();
  expect(pane.store.state().told?.tone).toBe("stopped");
});
