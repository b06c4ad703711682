import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

/** Recalculate on opening, always: left alone, LibreOffice shows the results that the file brings along. */
const ALWAYS_RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`;

/** A way to recalculate a file under a profile of its own, warmed up once; null where there is no LibreOffice. */
export function libreOffice(folder: string): ((file: string) => string) | null {
  if (spawnSync("soffice", ["--version"]).status !== 0) return null;
  const profile = path.join(folder, "profile");
  mkdirSync(path.join(profile, "user"), { recursive: true });
  writeFileSync(path.join(profile, "user", "registrymodifications.xcu"), ALWAYS_RECALCULATE);
  const to = path.join(folder, "answered");
  return (file) => {
    const words = ["--headless", `-env:UserInstallation=${pathToFileURL(profile).href}`, "--convert-to", "xlsx"];
    const { status } = spawnSync("soffice", [...words, "--outdir", to, file], { stdio: "ignore" });
    if (status !== 0) throw new Error("LibreOffice could not convert the file");
    return path.join(to, path.basename(file));
  };
}
