import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import metadata from "custom-functions-metadata";

/** At build time: the doc comments of the worksheet functions, as the spreadsheet of the page shows them to someone who types. */
export async function helpOfFunctions(folder) {
  const files = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => path.join(folder, entry.name))
    .filter((file) => readFileSync(file, "utf8").includes("@customfunction"));
  const { metadataJson, errors } = await metadata.generateCustomFunctionsMetadata(files);
  if (errors.length > 0) throw new Error(errors.join("\n"));
  return JSON.parse(metadataJson).functions.map(({ id, description, parameters }) => ({
    name: id,
    description,
    parameters: parameters.map(({ name, description: detail, optional = false }) => ({ name, detail, optional })),
  }));
}
