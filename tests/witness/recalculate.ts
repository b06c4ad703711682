import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import ExcelJS from "exceljs";

/** Recalculate xlsx files on opening: 0 is always. Left alone, LibreOffice shows the results that the file brings along. */
const ALWAYS_RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`;

/** The workbook as LibreOffice calculates it anew, under a profile of its own. */
export async function recalculated(book: ExcelJS.Workbook): Promise<ExcelJS.Workbook> {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-witness-"));
  try {
    const profile = path.join(folder, "profile");
    mkdirSync(path.join(profile, "user"), { recursive: true });
    writeFileSync(path.join(profile, "user", "registrymodifications.xcu"), ALWAYS_RECALCULATE);
    const file = path.join(folder, "asked.xlsx");
    await book.xlsx.writeFile(file);
    convert(file, profile, path.join(folder, "answered"));
    const answered = new ExcelJS.Workbook();
    await answered.xlsx.readFile(path.join(folder, "answered", "asked.xlsx"));
    return answered;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function convert(file: string, profile: string, to: string): void {
  const words = ["--headless", `-env:UserInstallation=${pathToFileURL(profile).href}`, "--convert-to", "xlsx"];
  execFileSync("soffice", [...words, "--outdir", to, file], { stdio: "pipe", timeout: 150_000 });
}
