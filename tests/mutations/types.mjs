/** Tells whether the types of a changed file still fit, without writing it anywhere. The program is read once. */
import path from "node:path";
import ts from "typescript";

export function typeCheckOf(root) {
  const { config } = ts.readConfigFile(path.join(root, "tsconfig.json"), ts.sys.readFile);
  const { fileNames, options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const held = new Map();
  let version = 0;
  const host = {
    getScriptFileNames: () => fileNames,
    getScriptVersion: (file) => String(held.get(file)?.version ?? 0),
    getScriptSnapshot: (file) => {
      const text = held.get(file)?.text ?? ts.sys.readFile(file);
      return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
    },
    getCurrentDirectory: () => root,
    getCompilationSettings: () => ({ ...options, noEmit: true }),
    getDefaultLibFileName: ts.getDefaultLibFilePath,
    fileExists: ts.sys.fileExists,
    readFile: ts.sys.readFile,
    readDirectory: ts.sys.readDirectory,
    directoryExists: ts.sys.directoryExists,
    getDirectories: ts.sys.getDirectories,
  };
  const service = ts.createLanguageService(host, ts.createDocumentRegistry());
  return (file, text) => {
    const full = path.join(root, file);
    const original = ts.sys.readFile(full);
    held.set(full, { text, version: (version += 1) });
    const faults = [...service.getSyntacticDiagnostics(full), ...service.getSemanticDiagnostics(full)];
    held.set(full, { text: original, version: (version += 1) });
    return faults.length === 0;
  };
}
