import { type NamedTable, withTableAddresses } from "../../../src/hosts/page/functions/table-references";

const children: NamedTable = {
  name: "Children",
  sheet: "Children",
  range: { top: 0, left: 0, bottom: 9, right: 3 },
  headerRow: true,
  totalsRow: false,
  headings: ["Child", "Birth date", "Site", "E-mail"],
};
const totals: NamedTable = {
  ...children,
  name: "Visits_1",
  sheet: "Spring visits",
  range: { top: 2, left: 1, bottom: 5, right: 2 },
  totalsRow: true,
  headings: ["Child", "Day"],
};

/** Microsoft Support, "Using structured references with Excel tables". */
test.each([
  ["=ROWS(Children)", "=ROWS(Children!$A$2:$D$10)"],
  ["=ROWS(Children[#All])", "=ROWS(Children!$A$1:$D$10)"],
  ["=ROWS(children[#data])", "=ROWS(Children!$A$2:$D$10)"],
  ["=COUNTA(Children[#Headers])", "=COUNTA(Children!$A$1:$D$1)"],
  ["=COUNTA(Children[Birth date],1)", "=COUNTA(Children!$B$2:$B$10,1)"],
  ["=COUNTA(Children[[#All],[Site]])", "=COUNTA(Children!$C$1:$C$10)"],
  ["=Visits_1[#Totals]", "='Spring visits'!$B$6:$C$6"],
  ["=Visits_1[Day]", "='Spring visits'!$C$4:$C$5"],
  ["=F(Children[#All],Visits_1[#All])", "=F(Children!$A$1:$D$10,'Spring visits'!$B$3:$C$6)"],
])("%s", (formula, expected) => expect(withTableAddresses(formula, [children, totals])).toBe(expected));

test.each([
  "=Children!A1",
  "='Children'!A1",
  '="Children[#All]"',
  '="say ""Children"" "',
  "=Children(1)",
  "=Children.Child",
  "=MyChildren",
  "=Children2",
  "=Children[Weight]",
  "=Children[#Totals]",
  "=Other[#All]",
  "=SUM(A1:B2)",
])("%s stays as it is", (formula) => expect(withTableAddresses(formula, [children, totals])).toBe(formula));
