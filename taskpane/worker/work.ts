import { dayFromIso, type Day } from "../../src/age/day";
import { runReport } from "../../src/report/run";
import { sheetNameOf } from "../../src/report/sheets/sheet-plan";
import { TABLE_LIST } from "../../src/report/table-list";
import { TABLES } from "../../src/records/tables";
import type { SheetOut } from "../../src/workbook/sheets";
import type { ReportChart } from "./chart-preview";
import { cellsFrom, type GroupedFindings } from "./finding-groups";
import type { FoundCell, RecordsFound } from "./found";
import { buffersOf, Held } from "./load";
import type { Built } from "./made";
import { keep, type KeptReport, madeOf } from "./make-report";
import { meansOf } from "./repairs";
import type { Answer, Ask, BuildAsk, Choices, RowsPart, SheetHead } from "./messages";
import { readFound } from "./read-found";
import { headOf, partsOf } from "./sheet-parts";

/** What is loaded only when it is asked for. */
export interface WorkTools {
  readonly writeFile: (sheets: readonly SheetOut[], created: Day) => Promise<Uint8Array<ArrayBuffer>>;
  readonly drawChart: (chart: ReportChart, width: number) => Promise<string>;
}

export interface WorkEvents {
  readonly onStep: (step: string) => void;
  readonly onRows: (part: RowsPart) => void;
}

/** Everything that takes time, away from the pane: it holds one workbook and the last report made of it. */
export class Work {
  private held: Held | null = null;
  private groups: readonly GroupedFindings[] = [];
  private kept: KeptReport | null = null;

  constructor(private readonly tools: WorkTools) {}

  choices(): Choices {
    return {
      tables: TABLE_LIST.map(({ id, internal }) => ({ id, internal, name: nameOf(id, internal) })),
      records: TABLES.map(({ name }) => ({ table: name, headings: meansOf(name) })),
    };
  }

  open({ workbook }: Ask<"open">): null {
    this.held = new Held(workbook);
    return null;
  }

  strings({ sheet, part }: Ask<"strings">): null {
    this.needHeld().addStrings(sheet, part);
    return null;
  }

  check({ settings, decisions }: Ask<"check">): RecordsFound {
    const { found, groups } = readFound(this.needHeld().workbook, settings, decisions);
    this.groups = groups;
    return found;
  }

  cells({ group, from }: Ask<"cells">): readonly FoundCell[] {
    const findings = this.groups[group];
    return findings ? cellsFrom(findings, from) : [];
  }

  build({ settings, decisions, tables }: BuildAsk, { onStep }: Pick<WorkEvents, "onStep">): Built {
    onStep("Reading the records");
    const found = this.check({ settings, decisions });
    this.kept = null;
    if (found.failure !== null) return { found, made: null };
    const report = runReport(this.needHeld().workbook, settings, { tables, decisions, onStep });
    onStep("Laying out the sheets");
    const asOf = dayFromIso(String(report.settings.asOf)) as Day;
    this.kept = keep(report, asOf);
    return { found, made: madeOf(report, this.kept) };
  }

  sheets(onRows: WorkEvents["onRows"]): readonly SheetHead[] {
    const { sheets } = this.needReport();
    for (const part of partsOf(sheets)) onRows(part);
    return sheets.map(headOf);
  }

  giveBack(): { readonly answer: Answer<"giveBack">; readonly transfer: ArrayBuffer[] } {
    const answer = this.needHeld().columns();
    this.held = null;
    return { answer, transfer: buffersOf(answer) };
  }

  file(): Promise<Uint8Array<ArrayBuffer>> {
    const { sheets, asOf } = this.needReport();
    return this.tools.writeFile(sheets, asOf);
  }

  chart({ chart, width }: Ask<"chart">): Promise<string> {
    const wanted = this.needReport().charts[chart];
    if (!wanted) throw new RangeError("chart: there is no such chart");
    return this.tools.drawChart(wanted, width);
  }

  private needHeld(): Held {
    if (!this.held) throw new RangeError("work: no workbook was handed over");
    return this.held;
  }

  private needReport(): KeptReport {
    if (!this.kept) throw new RangeError("work: no report was made");
    return this.kept;
  }
}

function nameOf(id: string, internal: boolean): string {
  return sheetNameOf({ id, internal, title: id, population: "", columns: [], rows: [], notes: [] });
}
