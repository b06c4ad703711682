import type { ComponentType } from "react";
import { CaseloadPlace } from "./caseload/caseload-place";
import { QuarterPlace } from "./quarter/quarter-place";
import { RecordsPlace } from "./records/records-place";
import { ReleasePlace } from "./release/release-place";

/** The places of the pane, each one job. Another one is another line here. */
export const PLACES: readonly { readonly id: string; readonly label: string; readonly View: ComponentType }[] = [
  { id: "records", label: "Records", View: RecordsPlace },
  { id: "quarter", label: "Quarter", View: QuarterPlace },
  { id: "caseload", label: "Caseload", View: CaseloadPlace },
  { id: "release", label: "Release", View: ReleasePlace },
];
